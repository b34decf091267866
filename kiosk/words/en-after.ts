/** English words of what follows a dose. */
export const enAfter = {
  open: 'Watch it',
  title: (name: string) => `Watch ${name}`,
  minutes: (first: string, last: string) => `Signs begin ${first} to ${last} minutes after it`,
  back: 'Back',
  refrigerate: 'Jug or bottle back into the refrigerator',
  rest: 'Give the rest',
  extra: (medicine: string, which: string) => `${medicine}: ${which}`,
};
