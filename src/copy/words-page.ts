/** Who needs a word: the page around the reasons and drafts of `board-due.ts`. */

import { cautions, HELP } from './cautions.ts';
import { many } from './grammar.ts';

export const wordsPage = {
  title: 'Who needs a word',
  back: 'The board',
  sub: (n: number, title: string): string => `${many(n, 'person', 'people')}, ${title}`,
  lead: 'Gravest first. Ask, and listen: a number says that something is so, never why.',
  nobodyBody: 'Nothing that was told so far asks for a word from you.',
  nobodyTold:
    'Nothing has come back yet. Once people tell you how it went, those who need a word stand here.',
  others: 'The others',
  noSign: 'Without a warning sign',
  tagsOf: (name: string): string => `Why ${name}`,
  toPerson: (name: string): string => `Everything that ${name} told`,
  draft: (name: string): string => `A message to ${name}`,
  about: 'What about',
  draftHelp: 'Change it as you like. Nothing is sent by itself.',
  anew: 'As it was proposed',
  share: 'Share it',
  copy: 'Copy it',
  copied: 'Copied.',
  shared: 'Handed on.',
  more: (n: number): string => `Show ${n} more`,
  sign: {
    title: 'With a warning sign',
    you: 'What you do',
    dos: [
      'Speak with them today: by voice, or better face to face.',
      'Ask how they are now. If the sign is there or comes back: the local emergency number, at once.',
      'They ask a doctor before they go on with any session, walking included.',
    ],
    not: 'What you do not do',
    donts: [
      'Guess what it is, or say that it is nothing. You are not there to diagnose.',
      'Plan an easier session for them in its place.',
    ],
    help: 'If it happens in front of you',
    steps: HELP,
    all: 'All stop signs, and the other cautions',
    notAdvice: cautions.notAdvice,
  },
} as const;
