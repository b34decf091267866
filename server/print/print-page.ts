import { type Html, html } from './html.ts';
import type { Printing } from './printing.ts';

/** What a page is printed on. */
export type Paper = 'a6' | 'roll';

/** What a page that prints is made of. */
export interface PrintedPage {
  readonly title: string;
  readonly paper: Paper;
  /** What the address says besides the paper, such as "without=a"; empty where nothing. */
  readonly asked?: string;
  /** Where its plate back leads. */
  readonly back: string;
  readonly sections: readonly Html[];
  readonly printing: Printing;
  /** A further place to go to from it. */
  readonly onward?: { readonly href: string; readonly name: string };
}

/** A page that prints as it stands, with large plates on the screen to print it, to change the paper and to go back. */
export function printPage({
  title,
  paper,
  back,
  sections,
  onward,
  asked = '',
  printing: { words, language },
}: PrintedPage): string {
  const at = (each: Paper): string => `?paper=${each}${asked === '' ? '' : `&${asked}`}`;
  const further = onward === undefined ? '' : html`<a href="${onward.href}" id="onward">${onward.name}</a>`;
  const papers = (['a6', 'roll'] as const).map((each) =>
    each === paper
      ? html`<a aria-current="page" data-paper="${each}" href="${at(each)}">${words.paper[each]}</a>`
      : html`<a data-paper="${each}" href="${at(each)}">${words.paper[each]}</a>`,
  );
  return html`<!doctype html>
<html lang="${language}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><link rel="stylesheet" href="/print/label.css?paper=${paper}"></head>
<body>
<nav><a href="${back}" id="back">${words.back}</a>${papers}${further}<button type="button" id="print">${words.print}</button></nav>
<main>${sections}</main>
<script src="/print/print.js"></script>
</body>
</html>`.html;
}
