/** English words of ready-made liquids. */
export const enBottle = {
  open: 'Open a bottle',
  which: 'Which bottle is in your hand?',
  strength: (strength: string) => `${strength} on its label`,
  size: 'How much does it hold?',
  expiry: 'Last month printed on it',
  expired: 'That month is over: do not use it.',
  month: (month: number, locale: string) =>
    new Intl.DateTimeFormat(locale, { month: 'short' }).format(new Date(2026, month - 1, 15)),
  goodFor: (days: string) => `Once open, ${days} days at most. The label wins.`,
  confirm: 'Put in use',
  bottleNumber: (number: number) => `Bottle ${number}`,
  opened: (when: string) => `opened ${when}`,
  openedWord: 'opened',
  isThis: 'Is THIS the bottle in your hand?',
  yes: (number: number) => `Yes, bottle ${number}`,
  holdYes: (number: number) => `Hold: it is bottle ${number}`,
};
