/** What is said when the app opens and a session was cut off. */
export const unfinished = {
  title: 'A session was cut off',
  body: (at: string, total: string): string => `You were at ${at} of ${total}.`,
  goOn: (at: string): string => `Go on from ${at}`,
  keep: 'Keep what was done',
  goOnHelp: 'Going on starts the sound again.',
} as const;
