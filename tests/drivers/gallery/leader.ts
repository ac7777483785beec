/** What a leader does with the board: words, next week, who came, keeping. With made-up people. */
import type { BoardState } from '../../../src/app/board-contract.ts';
import type { Attendance } from '../../../src/domain/board/attendance.ts';
import { attendanceKey } from '../../../src/domain/board/attendance.ts';
import { sheetOfProgramme } from '../../../src/domain/workshop/file.ts';
import { club, handPerson, heardPerson, secretOf } from '../board/heard.ts';
import { DEMO, type FakeOptions } from '../fake-app.ts';
import type { GalleryState } from './states.ts';

const ID = DEMO.id;
/** Sunday evening of the third week. */
const NOW = Date.UTC(2027, 2, 21, 19);
const at = Date.UTC(2027, 2, 20, 9);

const hurt = heardPerson(DEMO, {
  person: secretOf(901),
  name: 'Hedda Saltmarsh-Featheringham',
  group: 'curlew',
  entries: [
    { week: 2, session: 1, group: 'curlew', effort: 8, niggle: { place: 'knee', side: 'left' } },
    { week: 3, session: 1, group: 'curlew', effort: 8, niggle: { place: 'knee', side: 'left' } },
  ],
});
const sign = heardPerson(DEMO, {
  person: secretOf(902),
  name: 'Jory',
  group: 'wren',
  entries: [
    { week: 2, session: 1, group: 'wren', effort: 5 },
    { week: 3, session: 1, group: 'wren', effort: 8, share: 0.4, warningSign: true },
  ],
});
/** All of one group found it hard. */
const swifts = Array.from({ length: 5 }, (_, n) =>
  heardPerson(DEMO, {
    person: secretOf(910 + n),
    name: ['Ivo', 'Merryn', 'Nils', 'Orla', 'Petra'][n] ?? '',
    group: 'swift',
    entries: [1, 2].map((session) => ({ week: 3, session, group: 'swift', effort: 9 })),
  }),
);
const tam = handPerson(DEMO, { person: 'hand.1', name: 'Old Tam', group: 'wren' });

const day: Attendance = {
  format: 'towpath-attendance/1',
  key: attendanceKey(ID, '2027-03-20'),
  programmeId: ID,
  date: '2027-03-20',
  which: { week: 3, session: 1, at },
  marks: Object.fromEntries(
    ['hand.1', secretOf(902), secretOf(901), secretOf(3), secretOf(4), secretOf(8)].map((who) => [
      who,
      { present: true, at },
    ]),
  ),
};

const here = club(DEMO, 30, 3);
const CLUB: Partial<BoardState> = {
  programmes: [DEMO],
  heard: { [ID]: [...here, ...swifts, hurt, sign, tam] },
  days: { [ID]: [day] },
  setups: {
    [ID]: {
      format: 'towpath-board/1',
      programmeId: ID,
      expected: { wren: { count: 14, at }, swift: { count: 9, at } },
      forgotten: [],
    },
  },
  goesOn: { [ID]: '2027-07-10' },
};
const CALM: Partial<BoardState> = {
  programmes: [DEMO],
  heard: {
    [ID]: [
      heardPerson(DEMO, {
        person: secretOf(3),
        name: 'Ada',
        group: 'curlew',
        entries: [{ week: 3, session: 1, group: 'curlew', effort: 6 }],
      }),
    ],
  },
};
const KEPT: Partial<BoardState> = {
  ...CLUB,
  goesOn: {},
  setups: {
    [ID]: {
      format: 'towpath-board/1',
      programmeId: ID,
      expected: {},
      keep: { on: true, at },
      forgotten: [],
    },
  },
};

const leader = (board: Partial<BoardState>, more: FakeOptions = {}): FakeOptions => ({
  now: NOW,
  publishing: {
    keys: { name: 'there', madeAt: at, savedAt: at, digits: async () => '402 917' },
  },
  telling: {},
  sheets: [sheetOfProgramme(DEMO)],
  board,
  ...more,
});
const state = (page: string, options: FakeOptions, press?: string): GalleryState => ({
  path: `/board/${ID}/${page}`,
  options,
  ...(press === undefined ? {} : { press }),
});

export const LEADER_STATES: Readonly<Record<string, GalleryState>> = {
  words: state('words', leader(CLUB)),
  'words-nobody': state('words', leader(CALM)),
  'words-nothing': state('words', leader({ programmes: [DEMO] })),
  next: state('next', leader(CLUB)),
  'next-applied': state('next', leader(CLUB), 'Put it into week 4 of Swift'),
  'next-nothing': state('next', leader(CLUB, { now: Date.UTC(2027, 1, 20) })),
  list: state('list', leader(CLUB, { now: at })),
  'list-add': state('list', leader(CLUB, { now: at }), 'Add a name'),
  'list-empty': state('list', leader({ programmes: [DEMO] })),
  'list-large': state('list', leader({ programmes: [DEMO], heard: { [ID]: club(DEMO, 120, 3) } })),
  keep: state('keep', leader(CLUB)),
  'keep-kept': state('keep', leader(KEPT)),
  'keep-forget': state('keep', leader(CALM), 'Forget Ada'),
};
