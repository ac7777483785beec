/** The leader's board with made-up people. */
import type { BoardState, IntakeReport } from '../../../src/app/board-contract.ts';
import type { Attendance } from '../../../src/domain/board/attendance.ts';
import { attendanceKey } from '../../../src/domain/board/attendance.ts';
import type { BoardSetup } from '../../../src/domain/board/setup.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { club, handPerson, heardPerson } from '../board/heard.ts';
import { marshProgramme } from '../exchange/programmes.ts';
import { DEMO, type FakeOptions } from '../fake-app.ts';
import type { GalleryState } from './states.ts';

const ID = DEMO.id;
/** Sunday evening of the third week. */
const NOW = Date.UTC(2027, 2, 21, 19);
const at = Date.UTC(2027, 2, 1);

/** Everything that can be told, by one person. */
export const JORY = 'jory-0123456789abcdefg';
const jory = heardPerson(DEMO, {
  person: JORY,
  name: 'Jory',
  group: 'curlew',
  leftOut: 1,
  entries: [
    { week: 1, session: 1, group: 'wren', effort: 4 },
    { week: 1, session: 2, group: 'curlew', effort: 6, note: 'Wind from the sea all the way out.' },
    { week: 2, session: 1, group: 'curlew', effort: 8, niggle: { place: 'knee', side: 'left' } },
    { week: 2, session: 2, group: 'curlew', effort: 7.5, share: 0.5 },
    {
      week: 3,
      session: 1,
      group: 'curlew',
      effort: 8,
      niggle: { place: 'knee', side: 'left', severity: 2 },
      warningSign: true,
      note: 'Had to stop by the sluice.\nSat down for a while.',
    },
  ],
});
export const HAND = 'hand.1';
const hand = handPerson(DEMO, { person: HAND, name: 'Old Tam', group: 'wren' });

const day: Attendance = {
  format: 'towpath-attendance/1',
  key: attendanceKey(ID, '2027-03-20'),
  programmeId: ID,
  date: '2027-03-20',
  which: { week: 3, session: 1, at },
  marks: { [HAND]: { present: true, at }, [JORY]: { present: true, at } },
};

const setup: BoardSetup = {
  format: 'towpath-board/1',
  programmeId: ID,
  expected: {
    wren: { count: 14, at },
    dunlin: { count: 12, at },
    curlew: { count: 9, at },
    swift: { count: 5, at },
  },
  forgotten: [],
};

export const CLUB: Partial<BoardState> = {
  programmes: [DEMO],
  heard: { [ID]: [...club(DEMO, 30, 3), jory, hand] },
  days: { [ID]: [day] },
  setups: { [ID]: setup },
  goesOn: { [ID]: '2027-07-10' },
};

const read = readProgramme(JSON.stringify(marshProgramme(12)));
if (!read.ok) throw new Error('the marsh programme is not a programme');
/** Twelve weeks. */
export const LONG = read.value;
const LONG_CLUB: Partial<BoardState> = {
  programmes: [LONG],
  heard: { [LONG.id]: club(LONG, 500, 12) },
};
const LATE = Date.UTC(2027, 4, 23, 19);

const REPORT: IntakeReport = {
  found: 61,
  taken: { [ID]: { answers: 38, people: 24, sessions: 71 } },
  left: [
    { why: 'again', count: 12, from: ['chat with the marsh club.zip'] },
    { why: 'not-for-this-key', count: 2, from: ['from-tuesday.txt'] },
    { why: 'other-programme', count: 1, from: [''] },
    { why: 'damaged', count: 2, from: ['marsh/a.txt', 'marsh/b.txt'] },
    { why: 'cut-short', count: 1, from: ['marsh/c.txt'] },
    { why: 'ahead', count: 1, from: ['marsh/d.txt'] },
    { why: 'forgotten', count: 3, from: ['marsh/e.txt', 'marsh/f.txt'] },
    { why: 'newer', count: 1, from: ['marsh/g.txt'] },
    { why: 'file', count: 4, from: ['holiday.mov', 'list.pdf', 'song.mp3'] },
  ],
};

const keys: FakeOptions['publishing'] = {
  keys: { name: 'there', madeAt: at, savedAt: at, digits: async () => '402 917' },
};
const leader = (board: Partial<BoardState>, more: FakeOptions = {}): FakeOptions => ({
  now: NOW,
  publishing: keys,
  board,
  ...more,
});
const state = (path: string, options: FakeOptions): GalleryState => ({ path, options });

export const BOARD_STATES: Readonly<Record<string, GalleryState>> = {
  boards: state('/board', leader(CLUB)),
  'boards-none': state('/board', leader({})),
  'boards-no-keys': state('/board', leader(CLUB, { publishing: { keys: { name: 'none' } } })),
  'boards-not-the-leader': state(
    '/answer/AQabc',
    leader(
      { intake: { name: 'refused', why: 'no-keys' } },
      { publishing: { keys: { name: 'none' } } },
    ),
  ),
  'boards-reading': state(
    '/board',
    leader({ ...CLUB, intake: { name: 'reading', share: 0.37, report: REPORT } }),
  ),
  'boards-report': state(
    '/board',
    leader({ ...CLUB, intake: { name: 'done', cancelled: false, report: REPORT } }),
  ),
  'boards-nothing': state(
    '/board',
    leader({
      ...CLUB,
      intake: { name: 'done', cancelled: false, report: { found: 0, taken: {}, left: [] } },
    }),
  ),
  board: state(`/board/${ID}`, leader(CLUB)),
  'board-empty': state(`/board/${ID}`, leader({ programmes: [DEMO] })),
  'board-large': state(`/board/${LONG.id}`, leader(LONG_CLUB, { now: LATE })),
  person: state(`/board/${ID}/who/${JORY}`, leader(CLUB)),
  'person-by-hand': state(`/board/${ID}/who/${HAND}`, leader(CLUB)),
};
