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
  niggleNo: 'No, or only sore',
  niggleNoHelp: 'Dull, on both sides, gone in two or three days: ordinary soreness',
  niggleYes: 'Yes, in one place',
  niggleYesHelp: 'One spot, a joint or a bone, sharp, or worse as you went on',
  where: 'Where?',
  side: 'Which side?',
  sideNone: 'Neither',
  niggleDo:
    'No running on it while it hurts to walk. If it is back next time, or swells, ask a doctor or physiotherapist, and tell your leader.',
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
  note: 'Note',
  noteHelp: 'For yourself: weather, way, shoes',
  save: 'Save',
  later: 'Later',
  laterHelp: 'It stays in the list under Done.',
  gone: 'This session is not in the record of this phone.',
} as const;
