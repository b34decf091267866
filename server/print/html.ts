/** A piece of HTML that is safe to place in a page. */
export interface Html {
  readonly html: string;
}

type Part = Html | string | number | readonly Html[];

/** Writes HTML; every text put into it is escaped, and only other HTML goes in as it is. */
export function html(texts: TemplateStringsArray, ...parts: readonly Part[]): Html {
  const written = texts.map((text, i) => text + (i < parts.length ? piece(parts[i] ?? '') : ''));
  return { html: written.join('') };
}

function piece(part: Part): string {
  if (typeof part === 'string' || typeof part === 'number') return escaped(String(part));
  return 'html' in part ? part.html : part.map(({ html: each }) => each).join('');
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
