import { type Html, html } from '../print/html.ts';
import type { OfficeWords } from './office-words.ts';

/** No script at all; styles and what a form asks for come from this server. */
export const OFFICE_POLICY =
  "default-src 'none'; style-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/** A way to another page. */
export interface OfficeWay {
  readonly href: string;
  readonly name: string;
  readonly here?: boolean;
}

/** What a page of the office stands in. */
export interface OfficeFrame {
  readonly language: string;
  readonly title: string;
  /** What the page is of and as of when. */
  readonly under: string;
  readonly ways: readonly OfficeWay[];
}

/** Frames a page by its title, the ways from it and what it is of. */
export type FrameOf = (title: string, ways: readonly OfficeWay[], under?: string) => OfficeFrame;

/** A page of the office, piece by piece. */
export function* officePage(frame: OfficeFrame, pieces: Iterable<string>): Generator<string> {
  const { language, title, under, ways } = frame;
  const links = ways.map(({ href, name, here }) =>
    here === true
      ? html`<a href="${href}" aria-current="page">${name}</a>`
      : html`<a href="${href}">${name}</a>`,
  );
  yield html`<!doctype html>
<html lang="${language}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><link rel="stylesheet" href="/office/office.css"></head>
<body><header><nav>${links}</nav></header>
<main><h1>${title}</h1><p>${under}</p>
`.html;
  yield* pieces;
  yield '</main></body></html>\n';
}

/** A page of one sentence. */
export function officeNote(frame: Omit<OfficeFrame, 'under'>, sentence: string): string {
  const page = officePage({ ...frame, under: '' }, [html`<p class="warn">${sentence}</p>`.html]);
  return [...page].join('');
}

/** Rows of cells under headings. */
export function officeTable(headings: readonly string[], rows: readonly Html[]): Html {
  return html`<table><thead><tr>${headings.map((name) => html`<th>${name}</th>`)}</tr></thead><tbody>${rows}</tbody></table>`;
}

/** The page on which an office says who it is; `wrong` where it said so wrongly. */
export function signInPage(
  { words: { signIn }, frame }: { readonly words: OfficeWords; readonly frame: FrameOf },
  wrong: boolean,
): string {
  const said = wrong ? html`<p class="warn">${signIn.wrong}</p>` : html``;
  const form = html`${said}<form method="post" action="/office/session"><label>${signIn.key}<input name="key" type="password" autocomplete="current-password" required maxlength="200"></label><button type="submit">${signIn.enter}</button></form>`;
  return [...officePage(frame(signIn.title, []), [form.html])].join('');
}
