/** Every screen in every state that a person can meet, with made-up data. */

import { IDLE_VIEW, NOTHING_OFFERED } from '../../../src/app/session/idle-view.ts';
import type { SessionView } from '../../../src/app/session-contract.ts';
import { agreedStart } from '../../../src/copy/agreed-start.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import { ms } from '../../../src/domain/units.ts';
import { DEMO, type FakeOptions, SETTINGS, viewAt } from '../fake-app.ts';
import { BOARD_STATES } from './board.ts';
import { LEAD_STATES } from './lead.ts';
import { LEADER_STATES } from './leader.ts';

export interface GalleryState {
  /** Address in the fragment. */
  readonly path: string;
  readonly options: FakeOptions;
  /** A control to press once the page is there, by its name. */
  readonly press?: string;
}

const ID = DEMO.id;
export const WREN = { programmeId: ID, groupId: 'wren', week: 1, session: 1 } as const;
export const CURLEW = { programmeId: ID, groupId: 'curlew', week: 1, session: 1 } as const;
const chosen = { [ID]: 'curlew' };
const read = { ...SETTINGS, cautionsReadOn: '2027-03-01', pocketCheckSkipped: true };
const at = Date.UTC(2027, 2, 2, 12, 31, 0);

export const record = {
  at,
  userAgent: 'Mozilla/5.0 (a phone)',
  installed: true,
  heardToEnd: true,
  hiddenMs: 112_000,
  longestSilenceMs: 320,
  events: ['start 0', 'hidden 4210', 'visible 116400', 'end 120000'],
};

export const ENTRIES: readonly LogEntry[] = [
  entry('e3', '2027-03-08', 2, 1, [[0, 1000]], 'ended-early', {}),
  entry('e2', '2027-03-05', 1, 2, [[0, 1860]], 'finished', {
    effort: 7,
    niggle: { place: 'knee', side: 'left' },
    note: 'Wind from the sea all the way out.',
  }),
  entry(
    'e1',
    '2027-03-02',
    1,
    1,
    [
      [0, 780],
      [960, 1860],
    ],
    'finished',
    { effort: 5, warningSign: true },
  ),
];

/** One that was written down by hand, with all that can be said. */
const WRITTEN: LogEntry = {
  ...entry('e0', '2027-03-06', 1, 3, [[0, 1860]], 'finished', {
    effort: 6,
    effortLater: 5,
    soreness: true,
    niggle: { place: 'calf', side: 'right', severity: 2 },
    note: 'With the group, round the sluice.',
  }),
  how: 'there',
  distanceM: 3400,
  editedAt: Date.UTC(2027, 2, 7, 9),
};
/** The latest is half an hour old. */
const LATER = Date.UTC(2027, 2, 8, 18, 30);

function entry(
  id: string,
  localDate: string,
  week: number,
  session: number,
  covered: LogEntry['covered'],
  outcome: LogEntry['outcome'],
  feeling: LogEntry['feeling'],
): LogEntry {
  const plans = DEMO.weeks[week - 1]?.sessions.curlew ?? [];
  const done = covered.reduce((sum, [from, to]) => sum + to - from, 0);
  return {
    format: 'towpath-log/2',
    id,
    programme: { id: ID, revision: 1, title: DEMO.title },
    group: { id: 'curlew', name: 'Curlew' },
    week,
    session,
    plan: plans[0]?.text ?? '',
    target: 50,
    startedAt: Date.parse(`${localDate}T17:40:00Z`),
    offsetMinutes: 60,
    zone: 'Europe/Amsterdam',
    localDate,
    outcome,
    doneSeconds: done,
    activeSeconds: done + 60,
    covered,
    feeling,
    how: 'app',
    ...(feeling.effort === undefined ? {} : { feltAt: at }),
  };
}

const run = (view: SessionView, options: FakeOptions = {}): GalleryState => ({
  path: '/run',
  options: { chosen, settings: read, view, ...options },
});
const watch = { settings: { ...read, mode: 'watch' as const } };
const screen = { medium: 'screen' as const, awake: true };
const running = viewAt(CURLEW, 651_000, {
  caption: 'Run. Two minutes.',
  offers: {
    ...NOTHING_OFFERED,
    hold: true,
    walkNow: true,
    skip: true,
    back: true,
    coolDown: 'jump',
  },
});
const walking = viewAt(CURLEW, 672_000, {
  caption: 'Set four of seven. Walk. One minute.',
  offers: {
    ...NOTHING_OFFERED,
    hold: true,
    oneMore: true,
    skip: true,
    back: true,
    coolDown: 'jump',
  },
});
const held = (state: SessionView['state']): SessionView => ({
  ...running,
  state,
  lane: state === 'holding' ? 'holding' : 'session',
  offers: { ...NOTHING_OFFERED, goOn: true, coolDown: 'jump' },
});
const check = {
  ...viewAt(WREN, 41_000),
  purpose: 'pocket-check' as const,
  caption: 'Still here.',
};
const waits = (
  state: SessionView['state'],
  left = 130_000,
  more: Partial<SessionView> = {},
): GalleryState =>
  run(
    viewAt(CURLEW, 0, {
      ...more,
      state,
      caption: state === 'waiting' ? 'Two minutes to go.' : '',
      offers: { ...NOTHING_OFFERED, goOn: true },
      wait: { startsAt: at + left, left: ms(left) },
    }),
    { now: at },
  );
const session = `/p/${ID}/1/1`;
const ready = { chosen, settings: read };

export const STATES: Readonly<Record<string, GalleryState>> = {
  welcome: { path: '/', options: {} },
  'welcome-embedded': { path: '/', options: { device: { embedded: true } } },
  'join-refused': {
    path: '/join',
    options: {
      received: {
        received: {
          name: 'refused',
          problem: {
            code: 'programme',
            problems: [
              { code: 'type', path: 'weeks[1].effort', detail: { expected: 'number' } },
              { code: 'group-unknown', path: 'weeks[2].sessions.owl', detail: { groups: 'wren' } },
            ],
          },
        },
      },
    },
  },
  groups: { path: `/p/${ID}/groups`, options: { chosen } },
  weeks: { path: `/p/${ID}`, options: { chosen, entries: ENTRIES } },
  'weeks-cut-off': {
    path: `/p/${ID}`,
    options: {
      chosen,
      session: {
        unfinished: {
          choice: CURLEW,
          position: ms(751_000),
          total: ms(1_860_000),
          startedAt: at,
          lastSeenAt: at + 751_000,
          offer: 'go-on',
        },
      },
    },
  },
  'before-first': { path: session, options: { chosen } },
  'before-check': {
    path: session,
    options: { chosen, settings: { ...SETTINGS, cautionsReadOn: '2027-03-01' } },
  },
  'before-ready': { path: session, options: ready },
  'before-together': { path: session, options: { ...ready, now: at }, press: agreedStart.open },
  'before-swift-week-3': { path: `/p/${ID}/3/2`, options: { ...ready, chosen: { [ID]: 'swift' } } },
  'before-coming': {
    path: session,
    options: { ...ready, pack: { name: 'coming', loaded: 412_000, total: 960_000 } },
  },
  'before-missing': { path: session, options: { ...ready, pack: { name: 'missing' } } },
  'before-damaged': { path: session, options: { ...ready, pack: { name: 'damaged' } } },
  'before-watch': { path: session, options: { chosen, ...watch } },
  'before-elsewhere': {
    path: session,
    options: {
      ...ready,
      view: { ...IDLE_VIEW, busyElsewhere: true },
      session: { prepare: async () => undefined },
    },
  },
  cautions: { path: '/cautions', options: {} },
  'pocket-explain': { path: '/pocket', options: { settings: { cautionsReadOn: '2027-03-01' } } },
  'pocket-running': {
    path: '/pocket',
    options: { view: check, session: { preparePocketCheck: async () => undefined } },
  },
  'pocket-late': {
    path: '/pocket',
    options: {
      view: { ...check, caption: '', late: true },
      session: { preparePocketCheck: async () => undefined },
    },
  },
  'pocket-good': { path: '/pocket', options: { settings: { pocketCheck: record } } },
  'pocket-gaps': {
    path: '/pocket',
    options: { settings: { pocketCheck: { ...record, longestSilenceMs: 14_200 } } },
  },
  'pocket-stopped': {
    path: '/pocket',
    options: {
      device: { platform: 'ios' },
      settings: { pocketCheck: { ...record, heardToEnd: false, installed: false } },
    },
  },
  'run-warm-up': run(viewAt(CURLEW, 4000, { caption: 'Warm-up. Easy walk. Five minutes.' })),
  'run-late': run(viewAt(CURLEW, 0, { caption: '', late: true })),
  'run-run': run(running),
  'run-walk': run(walking),
  'run-last': run(viewAt(CURLEW, 1_848_000, { caption: 'Ten seconds.' })),
  'run-long': run(
    viewAt({ ...CURLEW, groupId: 'swift', week: 3, session: 2 }, 320_000, { caption: 'Easy jog.' }),
  ),
  'run-brisk': run(viewAt(WREN, 400_000, { caption: 'Brisk walk. Two minutes.' })),
  'run-undo': run({ ...walking, offers: { ...walking.offers, undo: 'walk-now' } }),
  'run-one-more': run({
    ...walking,
    lane: 'one-more',
    left: ms(41_000),
    caption: 'One minute more.',
    offers: { ...NOTHING_OFFERED, hold: true, skip: true },
  }),
  'run-holding': run(held('holding')),
  'run-interrupted': run(held('interrupted')),
  'run-stalled': run(held('stalled')),
  'run-gap': run({
    ...running,
    gap: { stoppedAt: at, cameBackAt: at + 249_000, position: ms(505_000) },
  }),
  'run-unsaved': run({ ...running, unsaved: true }),
  'run-wrong': run({ ...held('holding'), wrong: true }),
  'run-more': { ...run(running), press: 'More' },
  'run-silent': run({ ...running, ...screen }),
  'run-none': { path: '/run', options: { chosen } },
  'watch-run': run({ ...running, ...screen }, watch),
  'watch-walk': run({ ...walking, ...screen, position: ms(675_000), left: ms(45_000) }, watch),
  'watch-3': run({ ...running, ...screen, left: ms(2600) }, watch),
  'watch-1': run({ ...running, ...screen, left: ms(600) }, watch),
  'watch-harder': run({ ...viewAt(CURLEW, 541_000), ...screen }, watch),
  'watch-easier': run({ ...viewAt(CURLEW, 481_000), ...screen }, watch),
  'watch-holding': run({ ...held('holding'), ...screen }, watch),
  'wait-go': waits('waiting'),
  'wait-late': waits('waiting', 130_000, { late: true }),
  'wait-silent': waits('waiting-silent'),
  'wait-missed': waits('waiting-silent', 0),
  'wait-cut-off': {
    path: '/',
    options: {
      chosen,
      now: at,
      session: {
        unfinished: {
          choice: CURLEW,
          position: ms(0),
          total: ms(1_860_000),
          startedAt: at + 240_000,
          lastSeenAt: at,
          offer: 'wait',
        },
      },
    },
  },
  'felt-new': { path: '/felt/e3', options: { chosen, entries: ENTRIES } },
  'felt-answered': { path: '/felt/e2', options: { chosen, entries: ENTRIES } },
  'felt-warning': { path: '/felt/e1', options: { chosen, entries: ENTRIES } },
  done: { path: '/done', options: { chosen, entries: ENTRIES } },
  'done-empty': { path: '/done', options: { chosen } },
  'done-entry': { path: '/done/e2', options: { chosen, entries: ENTRIES } },
  'done-entry-warning': { path: '/done/e1', options: { chosen, entries: ENTRIES } },
  'done-written': { path: '/done/e0', options: { chosen, entries: [WRITTEN] } },
  'done-remove': {
    path: '/done/e0',
    options: { chosen, entries: [WRITTEN] },
    press: 'Remove this session',
  },
  'felt-there': { path: '/felt/e0', options: { chosen, entries: [WRITTEN] } },
  'felt-again': { path: '/felt/e3/again', options: { chosen, entries: ENTRIES } },
  'ask-again': {
    path: `/p/${ID}`,
    options: { chosen, entries: ENTRIES, settings: { ...read, askAgain: true }, now: LATER },
  },
  'hand-new': { path: `/done/new/${ID}/2/1`, options: { chosen } },
  'hand-edit': { path: '/done/e2/edit', options: { chosen, entries: ENTRIES } },
  'hand-edit-written': {
    path: '/done/e0/edit',
    options: { chosen, entries: [WRITTEN], zone: { offsetMinutes: 0, zone: 'Europe/London' } },
  },
  ...LEAD_STATES,
  settings: { path: '/settings', options: { settings: { pocketCheck: record } } },
  'settings-watch': { path: '/settings', options: watch },
  about: { path: '/about', options: {} },
  install: { path: '/install', options: { device: { platform: 'ios' } } },
  'under-way': { path: '/settings', options: { view: running } },
  update: { path: '/', options: { updates: { waiting: true } } },
  nothing: { path: '/nowhere', options: {} },
  ...BOARD_STATES,
  ...LEADER_STATES,
};
