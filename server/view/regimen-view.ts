import { type Approval, approves, countIn } from '../../core/medicine/approval.ts';
import { CEILING_OF_TARGET } from '../../core/medicine/ceiling.ts';
import type { Figure, Unknown } from '../../core/medicine/figure.ts';
import { isKnown } from '../../core/medicine/figure.ts';
import { type Formulary, liquidsOf, packetsOf } from '../../core/medicine/formulary.ts';
import type { Medicine } from '../../core/medicine/medicine.ts';
import type { Packet } from '../../core/medicine/presentation.ts';
import type { Regimen } from '../../core/medicine/regimen.ts';
import type { Withdrawal } from '../../core/medicine/withdrawal.ts';
import type { FigureView, LiquidView, PacketView, RegimenView } from '../../shared/shed.ts';
import { rfc3339 } from './times.ts';

type Label = FigureView['label'];
type Unit = FigureView['unit'];

function figure(label: Label, unit: Unit, known: Figure | Unknown): FigureView {
  if (!isKnown(known)) return { label, unit, value: null, evidence: 'not-known', source: known.source };
  return { label, unit, value: known.value, evidence: known.evidence, source: known.source };
}

/** A withdrawal as a figure with its source. */
export function withdrawalFigure(label: Label, rule: Withdrawal): FigureView {
  switch (rule.kind) {
    case 'hours':
      return { label, unit: 'hours', value: rule.hours, evidence: rule.evidence, source: rule.source };
    case 'days':
      return { label, unit: 'days', value: rule.days, evidence: rule.evidence, source: rule.source };
    case 'not-for-people':
      return { label, unit: 'days', value: null, evidence: 'not-for-people', source: rule.source };
    case 'unknown':
      return { label, unit: 'days', value: null, evidence: 'not-known', source: rule.source };
  }
}

/** The ceiling of a rule: its own, or the project's guard where its rate is known. */
function ceilingOf({ target, ceiling }: Regimen): FigureView {
  if (ceiling !== null) return figure('ceiling', 'mg/kg', ceiling);
  const source = `Set by this project as a guard, ${CEILING_OF_TARGET} times the target; no source read gives one`;
  if (!isKnown(target)) return figure('ceiling', 'mg/kg', { evidence: 'unknown', source });
  return figure('ceiling', 'mg/kg', {
    value: CEILING_OF_TARGET * target.value,
    evidence: 'own-guard',
    source,
  });
}

function figuresOf(regimen: Regimen): FigureView[] {
  const { target, floor, repeatAfterDays, limits, meat, milk } = regimen;
  const { minAgeDays, minWeightKg, pregnancy } = limits;
  return [
    figure('target', 'mg/kg', target),
    ceilingOf(regimen),
    figure('floor', 'mg/kg', floor ?? { evidence: 'unknown', source: 'No source read gives one' }),
    figure('repeat', 'days', repeatAfterDays),
    ...(minAgeDays === null ? [] : [figure('min-age', 'days', minAgeDays)]),
    ...(minWeightKg === null ? [] : [figure('min-weight', 'kg', minWeightKg)]),
    ...(pregnancy === null ? [] : [figure('bred', 'days', pregnancy.afterBredDays)]),
    ...(pregnancy === null ? [] : [figure('males', 'days', pregnancy.afterMalesDays)]),
    withdrawalFigure('meat', meat),
    withdrawalFigure('milk', milk),
  ];
}

function notesOf({ limits, notes }: Regimen): RegimenView['notes'] {
  const { notInMilk, notDairy } = limits;
  const left = [notInMilk, notDairy].flatMap((limit) =>
    limit === null ? [] : [{ text: limit.why, source: limit.source }],
  );
  return [...left, ...notes.map(({ text, source }) => ({ text, source }))];
}

function regimenView(medicine: Medicine, regimen: Regimen, approval: Approval | undefined): RegimenView {
  return {
    id: regimen.id,
    medicine: medicine.name,
    active: medicine.active,
    species: regimen.species,
    use: regimen.use,
    purpose: regimen.purpose,
    figures: figuresOf(regimen),
    notes: notesOf(regimen),
    approval:
      approval === undefined
        ? null
        : {
            by: approval.by,
            direction: approval.direction,
            vet: approval.vet,
            at: rfc3339(approval.atMs),
            targetMgPerKg: approval.targetMgPerKg,
            meatHours: countIn(approval.meat, 'hours'),
            milkHours: countIn(approval.milk, 'hours'),
            meatDays: countIn(approval.meat, 'days'),
            milkDays: countIn(approval.milk, 'days'),
          },
  };
}

const NONE: ReadonlySet<string> = new Set();

/** Every regimen of the formulary that is not retired, with the approval in force. */
export function regimenViews(
  formulary: Formulary,
  approvals: readonly Approval[],
  retired = NONE,
): RegimenView[] {
  return formulary.flatMap((medicine) =>
    medicine.regimens
      .filter(({ id }) => !retired.has(id))
      .map((regimen) =>
        regimenView(
          medicine,
          regimen,
          approvals.find((approval) => approves(approval, regimen)),
        ),
      ),
  );
}

function packetView(medicine: Medicine, packet: Packet): PacketView {
  return {
    id: packet.id,
    medicine: medicine.name,
    active: medicine.active,
    grossGrams: packet.grossGrams.value,
    activeGrams: packet.activeGrams.value,
    madeUpToMl: packet.madeUpToMl.value,
    handling: medicine.handling.map(({ text }) => text),
  };
}

/** Every packet of the formulary that can be mixed. */
export function packetViews(formulary: Formulary, retired = NONE): PacketView[] {
  return formulary.flatMap((medicine) =>
    packetsOf(medicine)
      .filter(({ id }) => !retired.has(id))
      .map((packet) => packetView(medicine, packet)),
  );
}

/** Every liquid of the formulary that can be opened. */
export function liquidViews(formulary: Formulary, retired = NONE): LiquidView[] {
  return formulary.flatMap((medicine) =>
    liquidsOf(medicine)
      .filter(({ id }) => !retired.has(id))
      .map((liquid) => ({
        id: liquid.id,
        medicine: medicine.name,
        active: medicine.active,
        strengthMgPerMl: liquid.strength.value,
        bottlesMl: liquid.bottlesMl,
        openLifeDays: liquid.openLifeDays.value,
      })),
  );
}
