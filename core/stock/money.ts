/** An amount of money in whole minor units of its currency, such as cents. */
export interface Money {
  /** A code of ISO 4217, such as "EUR". */
  readonly currency: string;
  readonly minor: number;
}

/** The currencies prices can be entered in, codes of ISO 4217. */
export const CURRENCIES = ['USD', 'EUR', 'GBP', 'CAD', 'AUD', 'NZD', 'ZAR', 'CHF'] as const;
/** One of {@link CURRENCIES}. */
export type Currency = (typeof CURRENCIES)[number];

/** An amount of money. Throws `RangeError` unless `minor` is a whole number of zero or more. */
export function money(currency: string, minor: number): Money {
  if (!Number.isSafeInteger(minor) || minor < 0)
    throw new RangeError(`${minor} is not a whole number of the smallest unit of ${currency}`);
  return { currency, minor };
}

/** How many decimals a currency is written with: 2 for cents, 0 where there is no smaller coin. */
export function minorDigits(currency: string): number {
  return (
    new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2
  );
}

/** Reads a price as it was keyed in, such as "12.4"; `null` where it has more decimals than its currency. */
export function priceFrom(entry: string, currency: string): Money | null {
  const [, whole, decimals = ''] = /^(\d{1,9})(?:\.(\d*))?$/.exec(entry) ?? [];
  const digits = minorDigits(currency);
  if (whole === undefined || decimals.length > digits) return null;
  return money(currency, Number(whole + decimals.padEnd(digits, '0')));
}
