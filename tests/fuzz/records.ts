import { readBoards, writeBoards } from '../../src/domain/board/file.ts';
import { asAttendance, asHeard, asSetup } from '../../src/domain/board/shapes.ts';
import { heardOf } from '../../src/domain/board/take.ts';
import { LEFT_OUT, type Stores, writeBackup } from '../../src/domain/exchange/backup.ts';
import { BACKUP_CODES, readBackup } from '../../src/domain/exchange/backup-read.ts';
import { toCalendar } from '../../src/domain/exchange/calendar.ts';
import { logExport } from '../../src/domain/exchange/log-export.ts';
import { logTable } from '../../src/domain/exchange/log-table.ts';
import { restore } from '../../src/domain/exchange/restore.ts';
import { blankSheet } from '../../src/domain/workshop/blank.ts';
import { fromRow, toRow } from '../../src/platform/store/heard-row.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { entry } from '../drivers/records/entries.ts';
import type { AnswerSeeds } from './answers.ts';
import type { Decoder } from './decoders.ts';
import { hostileJson } from './hostile.ts';
import { RECORDS } from './intake.ts';
import type { Random } from './random.ts';
import { polluted, scratchText } from './scratch.ts';

const AT = Date.UTC(2027, 2, 12, 18);
const BOUNDED = 400_000;

const log = ['a', 'b', 'c'].map((id, n) =>
  entry({ id, startedAt: AT + n, feeling: { effort: n } }),
);
const text = JSON.stringify(marshProgramme(4));

/** A phone of its own, which a backup is taken in on. */
const here: Stores = {
  log: [['mine', entry({ id: 'mine' })]],
  choices: [['heron-loop-spring', 'wren']],
  settings: [['settings', { cautionsReadOn: '2027-03-01' }]],
  programmes: [['heron-loop-spring', { id: 'heron-loop-spring', text, cameAt: AT }]],
};
const there: Stores = {
  ...here,
  log: log.map((each) => [each.id, each]),
  sheets: [['marsh', blankSheet('marsh', 'en')]],
  following: [
    [
      'heron-loop-spring',
      {
        format: 'towpath-following/1',
        programmeId: 'heron-loop-spring',
        pauses: [{ from: '2027-03-02', to: '2027-03-05', why: 'illness' }],
        decisions: [{ on: '2027-03-06', week: 2, group: 'wren', why: 'ease' }],
      },
    ],
  ],
};

const FILES = {
  backup: writeBackup(there, 'A backup.', AT),
  'log as JSON': logExport(log, AT),
  'log as a table': logTable(log),
  calendar: toCalendar([], AT),
} as const;
const KINDS = Object.keys(FILES) as readonly (keyof typeof FILES)[];

const damaged = (file: string, random: Random): string =>
  file.startsWith('{') && random.chance(0.6)
    ? hostileJson(JSON.parse(file), random)
    : scratchText(file, random);

/** A phone's backup and its log, read and merged into what is here. */
export const backupDecoder = (): Decoder => ({
  name: 'backup, log, taken in',
  share: 150,
  make(random) {
    const kind = random.pick(KINDS);
    return { kind, content: damaged(FILES[kind], random) };
  },
  look({ content }) {
    const read = readBackup(String(content));
    if (!read.ok)
      return BACKUP_CODES.includes(read.error) ? polluted() : `unknown reason ${read.error}`;
    const once = restore(here, read.value.stores);
    const twice = restore(once.stores, read.value.stores);
    if (twice.changes.length > 0) return 'taken in twice is not as once';
    const strange = once.changes.find(({ store }) => LEFT_OUT.has(store));
    if (strange !== undefined) return `${strange.store} came from a backup`;
    if (!(once.stores.log ?? []).some(([key]) => key === 'mine')) return 'what was here is lost';
    return polluted();
  },
});

const sameAgain = (value: unknown, again: unknown): string | undefined => {
  const json = JSON.stringify(value);
  if (json.length > BOUNDED) return 'a record out of bounds';
  return JSON.stringify(again) === json ? undefined : 'another record when it is read again';
};

/** What is inside a leader's locked file, as if whoever made it had the passphrase. */
export function boardsDecoder({ responses }: AnswerSeeds): Decoder {
  const heard = responses.map(heardOf);
  const [day, setup] = RECORDS;
  const whole = writeBoards({ heard, days: [day] as never, setups: [setup] as never }, AT);
  return {
    name: 'boards of another leader',
    share: 250,
    make: (random) => ({ kind: 'boards', content: damaged(whole, random) }),
    look({ content }) {
      const read = readBoards(String(content));
      if (!read.ok) return ['damaged', 'newer'].includes(read.error) ? polluted() : read.error;
      const { heard: people, days, setups } = read.value;
      for (const each of people) {
        const wrong = sameAgain(each, asHeard(structuredClone(each)));
        if (wrong !== undefined) return wrong;
      }
      for (const each of days) {
        const wrong = sameAgain(each, asAttendance(structuredClone(each)));
        if (wrong !== undefined) return wrong;
      }
      for (const each of setups) {
        const wrong = sameAgain(each, asSetup(structuredClone(each)));
        if (wrong !== undefined) return wrong;
      }
      return polluted();
    },
  };
}

/** A person's row in the leader's own database, as a disk may damage it. */
export function rowDecoder({ responses }: AnswerSeeds): Decoder {
  const rows = responses.map((response) => toRow(heardOf(response)).json);
  return {
    name: 'row of the database',
    share: 100,
    make: (random) => ({ kind: 'row', content: damaged(random.pick(rows), random) }),
    look({ content }) {
      fromRow({ json: String(content) });
      return polluted();
    },
  };
}
