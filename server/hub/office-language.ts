import { ScreenLanguage } from '../../shared/language.ts';

const COOKIE = 'byreside-language';
const A_YEAR_SECONDS = 365 * 24 * 3600;

/** The value of a cookie by its name; `null` where it is not there or is of no form that is ours. */
export function cookieIn(header: string | undefined, name: string): string | null {
  const found = new RegExp(`(?:^|; )${name}=([\\w.-]{1,200})(?:;|$)`).exec(header ?? '');
  return found?.[1] ?? null;
}

/** The cookie by which a browser keeps the language that was chosen. */
export function languageCookie(language: ScreenLanguage): string {
  return `${COOKIE}=${language}; Path=/office; Max-Age=${A_YEAR_SECONDS}; HttpOnly; SameSite=Strict`;
}

/** The language a browser's pages are written in: the one chosen, or the first of its own that there is; else English. */
export function languageOf(headers: {
  readonly cookie?: string | undefined;
  readonly 'accept-language'?: string | undefined;
}): ScreenLanguage {
  const asked = [cookieIn(headers.cookie, COOKIE), ...acceptedIn(headers['accept-language'])];
  return asked.flatMap((each) => ScreenLanguage.safeParse(each).data ?? [])[0] ?? 'en';
}

/** The languages of an `Accept-Language` (RFC 9110), without their regions, the most wanted first. */
function acceptedIn(header: string | undefined): string[] {
  return (header ?? '')
    .split(',')
    .map((each) => {
      const [range = '', ...parameters] = each.split(';').map((part) => part.trim());
      const quality = parameters.find((part) => part.startsWith('q='))?.slice(2);
      return { language: range.split('-')[0]?.toLowerCase() ?? '', quality: Number(quality ?? 1) };
    })
    .filter(({ quality }) => quality > 0)
    .sort((one, other) => other.quality - one.quality)
    .map(({ language }) => language);
}
