/**
 * The spoken reminders that a leader may choose from, each in one short sentence: how to
 * move, how to breathe, how to keep safe. Anything else that a leader writes is shown only.
 */
export const REMINDERS = {
  'stand-tall': 'Stand tall, eyes on the path ahead.',
  'even-arms': 'Let your arms swing evenly.',
  'soft-shoulders': 'Let your shoulders drop.',
  'loose-hands': 'Keep your hands loose.',
  'light-steps': 'Take short, light steps.',
  'quiet-feet': 'Put your feet down quietly.',
  uphill: 'Uphill, shorten your steps.',
  downhill: 'Downhill, small steps, no hurry.',
  'breathe-out': 'Breathe all the way out.',
  'easy-breath': 'Let your breath find its own rhythm.',
  'talk-test': 'Say a sentence aloud. If it breaks up, slow down.',
  sip: 'Thirsty? Take a sip.',
  'look-both-ways': 'Look both ways before you cross.',
  'be-seen': 'Stay where you can be seen.',
  'one-ear': 'Keep one ear on the road.',
  'give-way': 'Give way to others on the path.',
  'sharp-pain': 'Sharp pain? Stop running, and walk.',
  unwell: 'Dizzy, or pain in the chest? Stop, and get help.',
  heat: 'Hot today? Slow down and look for shade.',
  slippery: 'Watch for mud, ice and wet leaves.',
  'start-slow': 'Start slower than you think.',
  'own-pace': 'Go at your own pace.',
  'something-left': 'Finish with something left.',
  'walking-is-fine': 'Walking is fine, at any time.',
} as const;

/** The id of a reminder that can be spoken. */
export type ReminderId = keyof typeof REMINDERS;

/** All of them, in the order in which they are offered. */
export const REMINDER_IDS = Object.keys(REMINDERS) as readonly ReminderId[];

/** Whether a programme's reminder is one that can be spoken; free text is not. */
export const isReminderId = (text: string): text is ReminderId => Object.hasOwn(REMINDERS, text);
