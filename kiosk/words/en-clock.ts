/** English for setting the clock. */
export const enClock = {
  door: 'Clock',
  setIt: 'Set it',
  whatDay: 'What day is it today?',
  whatTime: 'What time is it?',
  hour: 'Hour',
  tens: 'Ten minutes',
  minute: 'Minute',
  itIs: (time: string) => `It is ${time} now`,
  beforeRecord: 'A record has a later date. That date will count as unknown.',
};
