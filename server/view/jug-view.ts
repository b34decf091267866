import { type Formulary, liquidById, medicineById, packetById } from '../../core/medicine/formulary.ts';
import { expectedGross } from '../../core/mixing/expected-gross.ts';
import { type Jug, jugLife, remaining } from '../../core/mixing/jug.ts';
import { HOUR_MS } from '../../core/moment.ts';
import { grams } from '../../core/quantity/mass.ts';
import { handNotes } from '../../core/round/proof.ts';
import type { JugView } from '../../shared/jug.ts';
import { cautionView } from './dose-view.ts';
import { rfc3339 } from './times.ts';

/** A jug as the wire carries it. */
export function jugView(jug: Jug, wallMs: number, formulary: Formulary): JugView {
  const medicine = medicineById(formulary, jug.medicineId);
  return {
    id: jug.id,
    form: liquidById(formulary, jug.packetId) === undefined ? 'jug' : 'bottle',
    number: jug.number,
    medicine: medicine?.name ?? jug.medicineId,
    active: medicine?.active ?? jug.medicineId,
    strengthMgPerMl: jug.strength.value,
    strengthUncertainty: jug.relative,
    volumeMl: jug.volume.value,
    remainingMl: remaining(jug).value,
    letter: jug.weighed?.letter ?? null,
    expectedGrams: expectedGross(jug, grams(0))?.mass.value ?? null,
    mixedAt: rfc3339(jug.mixedAtMs),
    useBy: rfc3339(jug.useByMs),
    keeps: keepsView(jug, formulary),
    by: jug.by,
    storage: (medicine?.storage ?? []).map(({ keep, line }) => ({ keep, text: line.text })),
    refrigerate: medicine?.refrigerate ?? false,
    notes: handNotes(jug.medicineId, formulary).map(cautionView),
    stock: jugStockView(jug),
    life: jugLife(jug, wallMs),
  };
}

function keepsView(jug: Jug, formulary: Formulary): JugView['keeps'] {
  const packet = packetById(formulary, jug.packetId)?.packet;
  const liquid = liquidById(formulary, jug.packetId)?.liquid;
  const figure = packet?.jugLifeHours ?? liquid?.openLifeDays;
  if (figure === undefined) return null;
  const { value, evidence, source } = figure;
  const hours = packet === undefined ? 24 * value : value;
  // A day in which the clocks change is an hour shorter.
  const monthFirst = jug.useByMs < jug.mixedAtMs + (hours - 1) * HOUR_MS;
  return { unit: packet === undefined ? 'days' : 'hours', value, evidence, source, monthFirst };
}

/** What is printed on the packet or bottle a jug comes from; `null` where it is not from the stock. */
export function jugStockView({ stock }: Jug): JugView['stock'] {
  return stock === null ? null : { lot: stock.lot, expiresAt: rfc3339(stock.expiresAtMs) };
}
