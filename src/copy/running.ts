import type { Activity } from '../domain/programme/plan.ts';

/** What is said on the screen while a session runs. */
export const running = {
  title: 'Session',
  left: 'left',
  next: (what: string, length: string): string => `then ${what.toUpperCase()} ${length}`,
  nextEnd: 'then the end',
  effort: (n: number, words: string): string => `Effort ${n}: ${words}`,
  of: (at: string, total: string): string => `${at} of ${total}`,
  controls: 'Controls',
  hold: 'Hold',
  goOn: 'Go on',
  walkNow: 'Walk now',
  oneMore: 'One minute more',
  wrong: 'Something is wrong',
  more: 'More',
  moreTitle: 'More controls',
  lessMore: 'Close',
  skip: 'Skip to the next part',
  back: 'Back to the start of this part',
  coolDown: 'To the cool-down',
  fiveMinutes: 'Five minutes of easy walk, then the end',
  end: 'End the session',
  endHow: 'Press for one second to end',
  endAsk: 'End here? What was done is kept.',
  endYes: 'Yes, end it',
  endNo: 'No, go on',
  undoSkip: 'Skipped. Undo',
  undoWalk: 'Walking early. Undo',
  watch: 'Watch instead of hear',
  hear: 'Back to the usual screen',
  dark: 'Dark screen',
  light: 'Light screen',
  cautions: 'Cautions',
  holdingTitle: 'HOLD',
  holdingBody: (activity: string, left: string): string =>
    `Standing by. Then ${activity.toUpperCase()}, ${left} left of it.`,
  oneMoreTitle: 'ONE MORE',
  coolDownTitle: 'EASY WALK',
  interruptedTitle: 'Sound taken',
  interruptedBody:
    'A call or another app took the sound. The session waits here and does not start by itself.',
  late: 'Waiting for the sound',
  lateKeep: 'Waiting for the sound. Keep the phone in view until you hear it.',
  stalledTitle: 'The sound stands still',
  stalledBody: 'The phone says it plays, but nothing moves. Tap to bring it back.',
  gapTitle: 'There was a gap',
  gap: (stopped: string, back: string, minute: number): string =>
    `The sound stopped at ${stopped} and came back at ${back}. You were at minute ${minute}. Go on from minute ${minute}, or catch up?`,
  gapStillTitle: 'The sound has stopped',
  gapStill: (stopped: string, minute: number): string =>
    `The sound stopped at ${stopped} and is still silent. You were at minute ${minute}. Go on from minute ${minute}, or catch up?`,
  gapGoOn: (minute: number): string => `Go on from minute ${minute}`,
  gapCatchUp: 'Catch up',
  unsaved:
    'This phone cannot store the session just now. It goes on from memory and is written as soon as that works. Keep this page open.',
  silent: 'Without sound: keep this screen on and in view.',
  finishedTitle: 'Done',
  endedTitle: 'Ended',
  rate: 'How hard was it?',
  awake: 'Screen kept on',
  notAwake: 'The phone may turn the screen off: touch it now and then.',
  none: {
    title: 'No session is running',
    body: 'Choose one first.',
    go: 'To the sessions',
  },
  holding: 'Holding.',
} as const;

export const wrong = {
  title: 'Something is wrong',
  held: 'The session is on hold.',
  signs: 'Get help if you feel any of this',
  help: 'What to do',
  pain: 'Sharp or growing pain in a joint, bone or muscle: no more running. Walk home if you can, and tell your leader.',
  alright: 'It is all right',
  coolDown: 'Only walk from here',
  end: 'End the session',
} as const;

export const watching = {
  guard: 'Touch guard',
  guardHow: 'Press one second for controls',
  guardOpen: 'Show the controls',
  guardBack: 'Touch guard on',
  change: (activity: Activity): string => activity.toUpperCase(),
  truth:
    'A phone in a pocket cannot signal to someone who hears nothing: no sound, and no vibration once it is locked. Watching works only with the screen on and in view.',
  battery:
    'The screen stays on for the whole session. That takes roughly as much battery as watching a film that long.',
  vibration: 'Vibration comes with each change while the screen is on.',
} as const;
