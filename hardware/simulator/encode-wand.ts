import type { TagCode } from '../../core/herd/telegram.ts';

/** Which line form a simulated wand sends: line mode short or full, 23 characters in one, or 15 digits alone. */
export type WandForm = 'short' | 'full' | 'long' | 'digits';

/** The line for what a transponder said, without CR LF. */
export function encodeWandLine(code: TagCode, form: WandForm): string {
  const country = code.tag.slice(0, 3);
  const national = code.tag.slice(3);
  const reserved = String(code.reserved).padStart(5, '0');
  const block = code.extraBlock ? '1' : '0';
  switch (form) {
    case 'short':
      return `LA ${country} ${national}`;
    case 'full':
      return `LA ${reserved} ${block} ${country} ${national}`;
    case 'long':
      return `${code.animal ? '1' : '0'}${reserved}${block}0${country}${national}`;
    case 'digits':
      return code.tag;
  }
}
