import { isTimeZone } from '../../core/dosing/local-time.ts';
import { diagonalInches } from '../../core/panel/panel.ts';
import type { Intent, Refusal } from '../../shared/intent.ts';
import { LARGEST_INCHES, MOST_PEOPLE, SMALLEST_INCHES, UNNAMED_KEEPER } from '../config/kiosk-config.ts';
import type { BarnContext } from './barn-context.ts';
import { keep } from './shed-intents.ts';

type Of<T extends Intent['type']> = Extract<Intent, { type: T }>;

/** Keeps how large the panel is; every length on the screens follows from it. */
export function setPanel(barn: BarnContext, panel: Of<'set-panel'>): Refusal | null {
  const inches = diagonalInches(panel);
  if (inches < SMALLEST_INCHES || inches > LARGEST_INCHES) return 'no-such-panel';
  const { widthPx, heightPx } = panel;
  return settle(barn, { panel: { widthPx, heightPx, diagonalInches: inches } });
}

/** Keeps the zone in which days are counted. */
export function setTimeZone(barn: BarnContext, { timeZone }: Of<'set-time-zone'>): Refusal | null {
  return isTimeZone(timeZone) ? settle(barn, { timeZone }) : 'no-such-zone';
}

/** Adds one who works here, and has them work now. */
export function addPerson(barn: BarnContext, { name }: Of<'add-person'>): Refusal | null {
  const known = barn.config.people.filter((each) => each !== UNNAMED_KEEPER);
  if (known.some((each) => each.toLowerCase() === name.toLowerCase())) return 'person-known';
  if (known.length >= MOST_PEOPLE) return 'too-many-people';
  return settle(barn, { people: [...known, name] }) ?? keep(barn, 'person', name);
}

/** Takes one out who works here no more. */
export function removePerson(barn: BarnContext, { name }: Of<'remove-person'>): Refusal | null {
  const { people } = barn.config;
  const left = people.filter((each) => each !== name);
  const [first] = left;
  if (left.length === people.length) return 'no-such-person';
  if (first === undefined) return 'last-person';
  // Whoever comes by the same name later is somebody else; most have no PIN to forget.
  barn.network.forgetPin(name);
  const refused = settle(barn, { people: left });
  if (refused !== null || barn.memory.settings.person !== name) return refused;
  return keep(barn, 'person', first);
}

function settle(
  barn: BarnContext,
  settings: Parameters<NonNullable<BarnContext['settle']>>[0],
): Refusal | null {
  if (barn.settle === null) return 'only-for-real';
  barn.settle(settings);
  return null;
}
