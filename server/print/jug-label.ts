import type { Medicine } from '../../core/medicine/medicine.ts';
import type { Jug } from '../../core/mixing/jug.ts';
import { showNumber, showStrength } from '../../core/quantity/show.ts';
import { type Html, html } from './html.ts';
import type { Printing } from './printing.ts';
import { qrCode } from './qr-code.ts';

/** What the QR code of a jug says: plain text that any telephone reads without the kiosk. */
export function jugCode(jug: Jug, active: string, { words, time, shipped }: Printing): string {
  return [
    `${words.jug(jug.number)}: ${shipped(active)}`,
    showStrength(jug.strength),
    words.mixed(time(jug.mixedAtMs), jug.by),
    words.useBy(time(jug.useByMs)),
    words.jugId(jug.id),
  ].join('\n');
}

/** The label of a jug: what is in it, how strong, until when, and what it does to whoever handles it. */
export function jugLabel(jug: Jug, medicine: Medicine, printing: Printing): Html {
  const { words, time, shipped } = printing;
  return html`<section class="label">
    <div class="head">
      <div>
        <h1>${shipped(medicine.active)}</h1>
        <p class="strength">${showStrength(jug.strength)}</p>
        <p class="number">${words.jug(jug.number)}</p>
      </div>
      ${qrCode(jugCode(jug, medicine.active, printing))}
    </div>
    ${jug.discardedAtMs === null ? '' : html`<p class="warn">${words.poured}</p>`}
    <p class="use-by">${words.useBy(time(jug.useByMs))}</p>
    <p>${words.mixed(time(jug.mixedAtMs), jug.by)}. ${words.made(`${showNumber(jug.volume.value, 0)} mL`)}.</p>
    ${jug.clockTrusted ? '' : html`<p class="warn">${words.undated}</p>`}
    <p class="warn">${[...medicine.handling, ...medicine.storage.map(({ line }) => line)].map(({ text }) => shipped(text)).join('. ')}.</p>
    ${medicine.conflicts.map(({ days }) => html`<p class="warn">${words.conflict(days.value)}.</p>`)}
    <p><b>${words.agitate[medicine.agitate.how]}.</b></p>
    ${words.safety.map((line) => html`<p>${line}</p>`)}
  </section>`;
}
