import { calendarDay } from '../../core/dosing/local-time.ts';
import { type EnteredBy, isRefused, sameFigures } from '../../core/formulary/entered.ts';
import { hasPresentation, presentationFrom } from '../../core/formulary/entered-presentation.ts';
import { ruleFrom } from '../../core/formulary/entered-rule.ts';
import type { Addition, Retirement } from '../../core/medicine/additions.ts';
import { type Formulary, medicineById } from '../../core/medicine/formulary.ts';
import type { Medicine } from '../../core/medicine/medicine.ts';
import { mayBeInUse } from '../../core/mixing/jug.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import type { BarnContext } from './barn-context.ts';
import { formularyOf, type Memory } from './memory.ts';
import { runRound } from './run-round.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** Keeps a packet or a bottle that was read off its label, beside what a medicine ships in. */
export function keepPresentation(barn: BarnContext, intent: Of<'keep-presentation'>): Refusal | null {
  const { memory } = barn;
  const medicine = medicineById(memory.formulary, intent.medicineId);
  if (medicine === undefined) return 'no-such-medicine';
  const id = freeId(memory.formulary, medicine, intent.presentation.form === 'powder' ? 'packet' : 'bottle');
  const entered = presentationFrom(medicine, intent.presentation, id, enteredBy(barn));
  if (isRefused(entered)) return 'contradicts-itself';
  const inUse = medicine.presentations.filter((each) => !memory.retiredIds.has(each.id));
  if (hasPresentation(inUse, entered)) return 'already-there';
  return append(barn, { addTo: medicine.id, presentations: [entered], regimens: [] });
}

/** Keeps a rule as a label or a veterinarian gives it. It doses nothing until it is approved. */
export function keepRule(barn: BarnContext, intent: Of<'keep-rule'>): Refusal | null {
  const { memory } = barn;
  const medicine = medicineById(memory.formulary, intent.medicineId);
  if (medicine === undefined) return 'no-such-medicine';
  const { presentationId, species } = intent.rule;
  const known = medicine.presentations.some(({ id }) => id === presentationId);
  if (presentationId !== null && (!known || memory.retiredIds.has(presentationId))) return 'no-such-packet';
  const entered = ruleFrom(intent.rule, freeId(memory.formulary, medicine, species), enteredBy(barn));
  if (isRefused(entered)) return 'contradicts-itself';
  const inUse = medicine.regimens.filter(({ id }) => !memory.retiredIds.has(id));
  if (inUse.some((each) => sameFigures(each, entered))) return 'already-there';
  return append(barn, { addTo: medicine.id, presentations: [], regimens: [entered] });
}

/** Takes something of the farm's own out of use, unless a jug or an approval rests on it. */
export function retireOwn(barn: BarnContext, ownId: string): Refusal | null {
  const { memory } = barn;
  if (!memory.ownIds.has(ownId) || memory.retiredIds.has(ownId)) return 'not-our-own';
  if (memory.approvals.some(({ regimenId }) => regimenId === ownId)) return 'still-approved';
  if (inService(barn, ownId)) return 'still-in-service';
  return append(barn, { retire: ownId, ...enteredBy(barn) });
}

function inService({ memory, clock }: BarnContext, presentationId: string): boolean {
  const { mixing, jugs } = memory;
  if ('plan' in mixing && mixing.plan.packetId === presentationId) return true;
  if ('packetId' in mixing && mixing.packetId === presentationId) return true;
  const labelled = mixing.step === 'label' ? [mixing.jug] : [];
  const { wallMs } = clock.now();
  return [...jugs, ...labelled].some(
    (jug) => jug.packetId === presentationId && mayBeInUse(jug, wallMs, clock.isTrusted()),
  );
}

function append(barn: BarnContext, entry: Addition | Retirement): Refusal | null {
  const after = barn.medicines.append([entry]);
  if (after === null) return 'medicines-unreadable';
  barn.memory = { ...barn.memory, ...formularyOf(after) };
  runRound(barn, { type: 'world-changed', what: 'rules' });
  return null;
}

function enteredBy({ memory, clock, config }: BarnContext): EnteredBy {
  const on = clock.isTrusted() ? calendarDay(clock.now().wallMs, config.timeZone) : null;
  return { by: memory.settings.person, on };
}

/** An id nobody has, that a person who reads the file can tell: `own-levamisole-packet-2`. */
function freeId(formulary: Formulary, { id }: Medicine, what: string): string {
  const taken = new Set(
    formulary.flatMap(({ presentations, regimens }) =>
      [...presentations, ...regimens].map((each) => each.id),
    ),
  );
  for (let n = 1; ; n += 1) {
    const own = `own-${id.slice(0, 40)}-${what}-${n}`;
    if (!taken.has(own)) return own;
  }
}

/** Why what was entered contradicts itself, in the schema's own sentence; `undefined` of any other intent. */
export function contradictionOf(intent: Intent, { formulary }: Memory): string | undefined {
  const nobody: EnteredBy = { by: '', on: null };
  if (intent.type === 'keep-rule') {
    const entered = ruleFrom(intent.rule, 'own', nobody);
    return isRefused(entered) ? entered.detail : undefined;
  }
  if (intent.type !== 'keep-presentation') return undefined;
  const medicine = medicineById(formulary, intent.medicineId);
  if (medicine === undefined) return undefined;
  const entered = presentationFrom(medicine, intent.presentation, 'own', nobody);
  return isRefused(entered) ? entered.detail : undefined;
}
