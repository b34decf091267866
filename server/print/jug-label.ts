import type { Medicine } from '../../core/medicine/medicine.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { showNumber, showStrength } from '../../core/quantity/show.ts';
import { type Html, html } from './html.ts';
import { labelTime } from './print-times.ts';
import { PRINT_WORDS } from './print-words.ts';
import { qrCode } from './qr-code.ts';

/** What the QR code of a jug says: plain text that any telephone reads without the kiosk. */
export function jugCode(jug: Jug, active: string, timeZone: string): string {
  return [
    `${PRINT_WORDS.jug(jug.number)}: ${active}`,
    showStrength(jug.strength),
    PRINT_WORDS.mixed(labelTime(jug.mixedAtMs, timeZone), jug.by),
    PRINT_WORDS.useBy(labelTime(jug.useByMs, timeZone)),
    `Jug id ${jug.id}`,
  ].join('\n');
}

/** The label of a jug: what is in it, how strong, until when, and what it does to whoever handles it. */
export function jugLabel(jug: Jug, medicine: Medicine, timeZone: string): Html {
  const words = PRINT_WORDS;
  return html`<section class="label">
    <div class="head">
      <div>
        <h1>${medicine.active}</h1>
        <p class="strength">${showStrength(jug.strength)}</p>
        <p class="number">${words.jug(jug.number)}</p>
      </div>
      ${qrCode(jugCode(jug, medicine.active, timeZone))}
    </div>
    ${jug.discardedAtMs === null ? '' : html`<p class="warn">${words.poured}</p>`}
    <p class="use-by">${words.useBy(labelTime(jug.useByMs, timeZone))}</p>
    <p>${words.mixed(labelTime(jug.mixedAtMs, timeZone), jug.by)}. ${words.made(`${showNumber(jug.volume.value, 0)} mL`)}.</p>
    ${jug.clockTrusted ? '' : html`<p class="warn">${words.undated}</p>`}
    <p class="warn">${[...medicine.handling, ...medicine.storage.map(({ line }) => line)].map(({ text }) => text).join('. ')}.</p>
    ${medicine.conflicts.map(({ days }) => html`<p class="warn">${words.conflict(days.value)}.</p>`)}
    <p><b>${words.agitate[medicine.agitate.how]}.</b></p>
    ${words.safety.map((line) => html`<p>${line}</p>`)}
  </section>`;
}
