/**
 * The usual cautions of walking and running, in our own words. They defer to local emergency
 * numbers, local rules and licensed practice, and diagnose nothing.
 *
 * Sources:
 * - who should ask first: Riebe D et al. 2015, Med Sci Sports Exerc 47(11):2473-9 (exercise
 *   preparticipation screening); a person checks themselves, nobody is cleared by an app.
 * - stop signs: union of patient pages of Allina Health, Geisinger and Cedars-Sinai on warning
 *   signs during exercise.
 * - heat: Armstrong LE et al. 2007, Med Sci Sports Exerc 39(3):556-72.
 * - warm-up and cool-down: ACSM guidelines, 5 to 10 minutes of light activity each.
 * - dark, ice, traffic, being alone, soreness against pain: common practice, no source.
 */
export interface CautionSection {
  readonly id: string;
  readonly title: string;
  readonly lead?: string;
  readonly points: readonly string[];
  readonly end?: string;
}

export const STOP_SIGNS: readonly string[] = [
  'Pressure, tightness or pain in the chest, neck, jaw or arm, or between the shoulder blades',
  'Faint, dizzy or about to black out',
  'Breathless out of proportion, or too breathless to speak, and it does not settle',
  'A heartbeat that pounds, races or stumbles in a way that feels wrong',
  'Cold sweat, or feeling sick',
  'Sudden weakness, numbness, confusion, or trouble speaking or seeing',
];

export const HELP: readonly string[] = [
  'Stop. Sit or lie down where others can see you.',
  'If it is severe, or has not eased after a few minutes of rest, call your local emergency number. (112 works from mobile phones in many countries.)',
  'Say where you are: a street, a gate, a bridge. Let someone stay with you.',
  'Once it has passed, do not run home. See a doctor before the next session.',
];

export const cautions = {
  title: 'Before you go out',
  lead: 'Walking and running are good for most people, and can hurt some. Two minutes of reading.',
  read: 'I have read this',
  notAdvice:
    'This is general guidance, not medical advice. What a doctor, physiotherapist or qualified coach tells you, and the rules of the place where you are, come first.',
  sections: [
    {
      id: 'ask-first',
      title: 'Ask a doctor first if',
      points: [
        'you have, or had, trouble with heart, blood vessels, kidneys or blood sugar;',
        'you have felt any of the stop signs below, at rest or when active;',
        'you are pregnant or gave birth lately, or had an operation or an injury that still shows;',
        'a medicine changes your pulse, your balance or how you bear heat;',
        'you have hardly moved for months and mean to go hard. Easy walking is the safer start.',
      ],
      end: 'If you are under 16, start with the yes of a parent or guardian.',
    },
    {
      id: 'stop',
      title: 'Stop at once if you feel',
      points: STOP_SIGNS,
    },
    {
      id: 'help',
      title: 'What to do then',
      points: HELP,
    },
    {
      id: 'pain',
      title: 'Soreness or pain',
      points: [
        'Ordinary soreness is dull, in the muscles of both sides, comes the day after and is gone in two or three days. Walking eases it.',
        'Pain is another thing: in one place, in a joint or bone, sharp, or growing as you go on. Stop running, walk home, tell your leader.',
        'Pain that is back the next time, swells, wakes you at night or changes how you walk belongs to a doctor or physiotherapist.',
      ],
    },
    {
      id: 'weather',
      title: 'Heat, cold and ice',
      points: [
        'In heat go early or late, in the shade, slower, with water. Sun and damp air count as much as the thermometer.',
        'Headache, cramps, feeling sick or giddy in heat: stop, find shade, put water on the skin.',
        'Confusion, staggering or collapse in heat is an emergency: cool the person at once and call for help.',
        'On ice or in a storm warning, stay in or walk indoors. A missed session harms nobody.',
      ],
    },
    {
      id: 'road',
      title: 'Traffic and the dark',
      points: [
        'Keep one ear free: one earphone, or the phone’s speaker.',
        'Where there is no pavement, follow the local rule for walkers; where there is none, face the traffic.',
        'In the dark wear something bright or lit, and choose a path you know.',
        'When the voice says run and the road says stop, the road is right.',
      ],
    },
    {
      id: 'alone',
      title: 'Going alone',
      points: [
        'Tell someone where you go and when you will be back.',
        'Keep the phone charged, and know how to call for help from its locked screen.',
        'Turn round if a place or a person does not feel right.',
      ],
    },
    {
      id: 'easy',
      title: 'Every time',
      points: [
        'Do the warm-up and the cool-down: both are part of the session.',
        'Easing off is always allowed. Walk when it says run; the plan will wait.',
        'Not with a fever, and not within hours of drinking alcohol.',
      ],
    },
  ] satisfies readonly CautionSection[],
} as const;
