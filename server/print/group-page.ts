import type { Animal } from '../../core/herd/animal.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { type MassUnit, massIn } from '../../core/quantity/mass.ts';
import { showNumber, showRate, showVolume } from '../../core/quantity/show.ts';
import { mgPerKg } from '../../core/quantity/strength.ts';
import type { GroupPlan } from './group-plan.ts';
import { type Html, html } from './html.ts';
import type { Printing } from './printing.ts';

function weightWords({ lastWeight }: Animal, unit: MassUnit): string {
  return lastWeight === null ? '' : `${showNumber(massIn(lastWeight.mass, unit), 1)} ${unit}`;
}

/** The groups of one species, each with its dose and whom it is for, then who is in none and why. */
export function groupSections(
  plan: GroupPlan,
  jug: Jug,
  animals: readonly Animal[],
  unit: MassUnit,
  /** The address of this page with an animal left out, or taken in again. */
  toggle: (animalId: string) => string,
  { words: common, groups: words, shipped }: Printing,
): Html[] {
  const species = common.species[plan.species];
  const groups = plan.groups.map(({ members, dose: { dose, lightestGets } }, i) => {
    const { total, draws, syringe } = dose.plan;
    const mark = (volume: typeof total): string => showVolume(volume, syringe.graduation);
    const { value, low, high } = lightestGets;
    return html`<section class="label">
      <h2>${words.group(i + 1, species)}</h2>
      <p class="strength">${mark(total)}</p>
      <p><b>${common.jug(jug.number)}, ${shipped(syringe.name)}</b>${draws.length > 1 ? html`: ${draws.map(mark).join(' + ')}` : ''}</p>
      <p>${words.gets(showRate(mgPerKg(value)), showNumber(low, 1), showNumber(high, 1))}; ${common.never(showRate(mgPerKg(plan.regimen.ceiling.value)))}</p>
      <table>${members.map(({ id }) => {
        const animal = animals.find((one) => one.id === id);
        const asks = plan.asks.get(id) ?? [];
        const look =
          asks.length > 0 ? words.askFirst(asks.map(({ code }) => words.caution(code)).join(', ')) : '';
        return animal === undefined
          ? html``
          : html`<tr><th>${animal.name}</th><td>${weightWords(animal, unit)} <small>${look}</small></td><td class="toggle"><a href="${toggle(id)}">${words.leaveOut}</a></td></tr>`;
      })}</table>
    </section>`;
  });
  if (plan.out.length === 0) return groups;
  const rows = plan.out.map(({ animal, reason }) => {
    const why =
      reason.why === 'stop'
        ? `${words.reason.stop}: ${words.caution(reason.caution.code)}`
        : words.reason[reason.why];
    const back =
      reason.why === 'left-out' ? html`<a href="${toggle(animal.id)}">${words.takeIn}</a>` : html``;
    return html`<tr><th>${animal.name}</th><td>${weightWords(animal, unit)} <small>${why}</small></td><td class="toggle">${back}</td></tr>`;
  });
  return [
    ...groups,
    html`<section class="label"><h2>${words.out(species)}</h2><table>${rows}</table></section>`,
  ];
}
