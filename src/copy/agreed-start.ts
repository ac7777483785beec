/** A start agreed ahead: choosing it, waiting for it, missing it. */
export const agreedStart = {
  open: 'Start together at a time',
  title: 'Start together',
  how: 'Agree on a time with your group. Each taps once on their own phone, any time before. The phones wait, and begin by themselves at that time.',
  time: 'Starts at',
  timeHelp: 'By the clock of this phone, within the next 30 minutes.',
  clocks:
    'Each phone goes by its own clock. Let all of them set date and time by themselves: then they begin within two seconds of each other. Wireless headphones may add a quarter of a second.',
  wait: (time: string): string => `Wait for ${time}`,
  close: 'Close',
  problem: {
    'no-time': 'Give a time, such as 9:05.',
    'too-far': 'That is not within the next 30 minutes.',
  },
  startsAt: (time: string): string => `Starts at ${time}`,
  /** Seen between that and the time that is left, which has words of its own for a reader. */
  andIn: ',\u00a0in',
  until: (left: string): string => `${left} until the start`,
  first: (activity: string, length: string): string => `First: ${activity.toUpperCase()} ${length}`,
  pocket: 'Put the phone in your pocket; it may lock. It begins by itself.',
  seen: 'It begins by itself. Keep the screen on and in view.',
  now: 'Start now',
  leave: 'Leave the wait',
  leaveHow: 'Press for one second to leave',
  leaveAsk: 'Leave the wait? Nothing has begun, and nothing is kept.',
  leaveYes: 'Yes, leave it',
  leaveNo: 'No, wait on',
  silentTitle: 'The wait is silent',
  silentBody: (time: string): string =>
    `A call or another app took the sound. It comes back when you tap, and the start stays at ${time}.`,
  waitOn: 'Wait on',
  missedTitle: (time: string): string => `It started at ${time}`,
  missedBody: 'This phone was silent then. Nothing is counted yet.',
  fromTheStart: 'Start from the beginning',
  catchUp: 'Catch up with the others',
  cutOffTitle: 'A wait was cut off',
  cutOff: (time: string): string => `You were waiting for the start at ${time}.`,
  cutOffMissed: (time: string): string =>
    `You were waiting for the start at ${time}. That has passed.`,
  goOn: 'Wait again',
  goOnMissed: 'See what can be done',
  letGo: 'Let it go',
} as const;
