export const felt = {
  title: 'How hard was it?',
  lead: 'The whole session, walking included. Answer what you like and leave the rest.',
  effort: 'Effort',
  none: 'No answer',
  target: (n: number, words: string): string => `Meant to be ${n}: ${words}`,
  same: 'As it was meant.',
  harder: (by: number): string =>
    by >= 2
      ? 'Harder than it was meant. Go slower next time: the breath decides, not the speed.'
      : 'A little harder than it was meant. That happens.',
  easier: (by: number): string =>
    by >= 2
      ? 'Easier than it was meant. No need to add anything by yourself.'
      : 'A little easier than it was meant. That is fine.',
  niggle: 'Does something hurt?',
  niggleNo: 'No',
  onlySore: 'Only sore',
  onlySoreHelp:
    'Dull, in the muscles of both sides, gone in two or three days: ordinary, and walking eases it',
  niggleYes: 'Yes, in one place',
  niggleYesHelp: 'One spot, a joint or a bone, sharp, or worse as you went on: a niggle',
  alsoSore: 'Ordinary soreness as well',
  where: 'Where?',
  side: 'Which side?',
  severity: 'How much did it get in the way?',
  severities: {
    1: ['I noticed it', 'I moved as always'],
    2: ['It changed how I moved', 'A limp, a shorter step, or I eased off because of it'],
    3: ['It made me stop', ''],
  },
  niggleDo:
    'No running on it while it hurts to walk. If it is back next time, or swells, ask a doctor or physiotherapist, and tell your leader.',
  niggleStop:
    'No running on it before a doctor or physiotherapist has looked at it. Tell your leader.',
  warning: 'A warning sign',
  warningBox: 'I felt one of the stop signs',
  warningHelp:
    'Chest pain or pressure, faintness, breath that did not settle, a wrong heartbeat, sudden weakness',
  warningDoTitle: 'This comes before everything else',
  warningDo: [
    'If you feel it now: sit down and call your local emergency number.',
    'If it has passed: no more sessions until a doctor has said yes.',
    'Do not drive or stay alone today; let someone know.',
  ],
  warningSigns: 'All stop signs',
  distance: 'Distance',
  distanceHelp: 'In kilometres, if you know it: from a map, a watch or a measured path',
  note: 'Note',
  noteHelp: 'For yourself: weather, way, shoes',
  save: 'Save',
  later: 'Later',
  done: (done: string, total: string): string => `${done} of ${total} done.`,
  doneHow: { app: '', there: 'With the group.', 'by-hand': 'Written down by hand.' },
  doneChange: 'Put the time or length right',
  gone: 'This session is not in the record of this phone.',
} as const;
