import { createStore } from 'zustand/vanilla';
import type { BoardState } from '../../src/app/board-contract.ts';
import type {
  App,
  DeviceState,
  Exporter,
  FollowingState,
  LogState,
  PackState,
  PackStore,
  ProgrammesState,
  Settings,
  SettingsState,
  UpdatesState,
} from '../../src/app/contract.ts';
import { DEMO_PROGRAMME_TEXT } from '../../src/app/demo/demo.ts';
import type { PublishingState, ReceivedState } from '../../src/app/exchange-contract.ts';
import { hearPiece } from '../../src/app/hearing.ts';
import { once } from '../../src/app/once.ts';
import type { Records } from '../../src/app/records-contract.ts';
import { IDLE_VIEW, NOTHING_OFFERED } from '../../src/app/session/idle-view.ts';
import type { Choice, Led, SessionStore, SessionView } from '../../src/app/session-contract.ts';
import { firstChoice, leadPlanOf, staggered } from '../../src/domain/lead/choose.ts';
import { leadTimeline } from '../../src/domain/lead/lead-timeline.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import type { Following } from '../../src/domain/log/following.ts';
import type { ZoneTime } from '../../src/domain/log/local-date.ts';
import type { Programme } from '../../src/domain/programme/programme.ts';
import { readProgramme } from '../../src/domain/programme/read.ts';
import { layOut } from '../../src/domain/timeline/lay-out.ts';
import { segmentAt } from '../../src/domain/timeline/segment-at.ts';
import type { VoicePack } from '../../src/domain/track/pack.ts';
import { ms } from '../../src/domain/units.ts';
import type { Sheet } from '../../src/domain/workshop/sheet.ts';
import { fakeBoard } from './board/fake-board.ts';
import { fakePublishing, fakeReceived } from './exchange/fake-stores.ts';
import {
  memoryTelling,
  seenByTelling,
  type TellingSeen,
  type TellingWish,
} from './exchange/memory-telling.ts';
import { fakeRecords } from './records/fake-records.ts';
import { fakeWorkshop } from './workshop/workshop.ts';

const read = readProgramme(DEMO_PROGRAMME_TEXT);
if (!read.ok) throw new Error('the demo programme is not a programme');
export const DEMO = read.value;

export const SETTINGS: Settings = {
  talk: 'usual',
  mode: 'hear',
  vibration: true,
  appearance: 'auto',
};

export const DEVICE: DeviceState = {
  installed: false,
  platform: 'android',
  embedded: false,
  canVibrate: true,
  canWakeLock: true,
  canShareFiles: true,
};

/** The view of a demo session at a place, as the app would show it there. */
export function viewAt(choice: Choice, at: number, more: Partial<SessionView> = {}): SessionView {
  const week = DEMO.weeks[choice.week - 1];
  const plans = week?.sessions[choice.groupId] ?? [];
  const plan = plans[choice.session - 1] ?? plans[0];
  if (week === undefined || plan === undefined) throw new Error('no such session in the demo');
  const timeline = layOut(plan.plan);
  const position = ms(at);
  const segment = segmentAt(timeline, position);
  const next = segment && timeline.segments[segment.index + 1];
  return {
    ...IDLE_VIEW,
    state: 'running',
    choice,
    programmeTitle: DEMO.title,
    groupName: DEMO.groups.find((group) => group.id === choice.groupId)?.name ?? '',
    planText: plan.text,
    target: week.effort,
    timeline,
    position,
    ...(segment ? { segment } : {}),
    left: ms(segment ? segment.end - position : 0),
    ...(next ? { next } : {}),
    offers: { ...NOTHING_OFFERED, hold: true, skip: true, back: true, coolDown: 'jump' },
    ...more,
  };
}

/** The view of groups that are led, at a place. */
export function leadViewAt(lead: Led, at: number, more: Partial<SessionView> = {}): SessionView {
  const timeline = leadTimeline(lead.plan);
  const position = ms(at);
  const segment = segmentAt(timeline, position);
  const next = segment && timeline.segments[segment.index + 1];
  return {
    ...IDLE_VIEW,
    state: 'running',
    purpose: 'lead',
    lead,
    awake: true,
    programmeTitle: lead.programme.title,
    timeline,
    position,
    ...(segment ? { segment } : {}),
    left: ms(segment ? segment.end - position : 0),
    ...(next ? { next } : {}),
    offers: { ...NOTHING_OFFERED, hold: true },
    ...more,
  };
}

/** Groups of the demo's first week, as they would be led: each two minutes after the one before. */
export function ledAt(key: string, of: Programme = DEMO, minutes = 2): Led {
  const first = firstChoice(of, '2027-03-06');
  const choice = staggered(first, minutes);
  const plan = leadPlanOf(of, choice);
  if (plan === undefined) throw new Error('no group to lead');
  return { key, programme: { id: of.id, title: of.title }, choice, plan };
}

export interface FakeOptions {
  readonly settings?: Partial<Settings>;
  readonly chosen?: Readonly<Record<string, string>>;
  readonly pack?: PackState;
  readonly view?: SessionView;
  readonly session?: Partial<SessionStore>;
  readonly entries?: readonly LogEntry[];
  readonly following?: readonly Following[];
  /** UTC milliseconds; 8 March 2027, 18:30 UTC where nothing is said. */
  readonly now?: number;
  readonly zone?: ZoneTime;
  readonly device?: Partial<DeviceState>;
  readonly updates?: Partial<UpdatesState>;
  readonly programmes?: Partial<ProgrammesState>;
  readonly received?: Partial<ReceivedState>;
  readonly publishing?: Partial<PublishingState>;
  readonly exporter?: Partial<Exporter>;
  readonly records?: Partial<Records>;
  /** What "hear it" is composed from; without it only the words are there. */
  readonly voice?: VoicePack | undefined;
  /** Programmes in writing, kept as `sheet-1` and on; the workshop over them is the real one. */
  readonly sheets?: readonly Sheet[];
  /** Telling the leader is the real one, over a memory. */
  readonly telling?: TellingWish;
  /** What came back to the leader. */
  readonly board?: Partial<BoardState>;
}

export interface FakeApp extends App {
  /** Names of everything that was asked of it, with the arguments. */
  readonly asked: unknown[][];
  /** What telling the leader kept and handed on. */
  readonly told: TellingSeen;
}

/** An app that does nothing but remember what it was asked; its stores are set by hand. */
export function fakeApp(options: FakeOptions = {}): FakeApp {
  const asked: unknown[][] = [];
  const note =
    (name: string) =>
    (...args: unknown[]): void => {
      asked.push([name, ...args]);
    };
  const later =
    (name: string) =>
    async (...args: unknown[]): Promise<void> => {
      asked.push([name, ...args]);
    };
  const programmes = createStore<ProgrammesState>()((set) => ({
    ready: true,
    programmes: [DEMO],
    chosen: options.chosen ?? {},
    chooseGroup: async (id, group) => {
      asked.push(['chooseGroup', id, group]);
      set((state) => ({ chosen: { ...state.chosen, [id]: group } }));
    },
    ...options.programmes,
  }));
  const settings = createStore<SettingsState>()((set) => ({
    settings: { ...SETTINGS, ...options.settings },
    change: async (part) => {
      asked.push(['change', part]);
      set((state) => ({ settings: { ...state.settings, ...part } }));
    },
  }));
  const pack = createStore<PackStore>()(() => ({
    pack: options.pack ?? { name: 'ready' },
    retry: later('retry'),
  }));
  const session = createStore<SessionStore>()((set) => ({
    view: options.view ?? IDLE_VIEW,
    prepare: async (what, medium) => {
      asked.push(['prepare', what, medium]);
      const view = 'plan' in what ? leadViewAt(what, 0) : viewAt(what, 0);
      set({ view: { ...view, state: 'ready', medium } });
    },
    preparePocketCheck: async () => {
      asked.push(['preparePocketCheck']);
      set({ view: { ...IDLE_VIEW, purpose: 'pocket-check', state: 'ready' } });
    },
    start: note('start'),
    playCueNow: note('playCueNow'),
    hold: note('hold'),
    goOn: note('goOn'),
    oneMore: note('oneMore'),
    walkNow: note('walkNow'),
    skip: note('skip'),
    back: note('back'),
    undo: note('undo'),
    toCoolDown: note('toCoolDown'),
    end: note('end'),
    somethingIsWrong: note('somethingIsWrong'),
    allRight: note('allRight'),
    watch: note('watch'),
    afterGap: note('afterGap'),
    recover: later('recover'),
    close: note('close'),
    ...options.session,
  }));
  const log = createStore<LogState>()((set) => ({
    ready: true,
    entries: options.entries ?? [],
    write: async (entry) => {
      asked.push(['write', entry]);
      set(({ entries }) => ({ entries: [entry, ...entries.filter(({ id }) => id !== entry.id)] }));
    },
    remove: async (entryId) => {
      asked.push(['remove', entryId]);
      set(({ entries }) => ({ entries: entries.filter(({ id }) => id !== entryId) }));
    },
  }));
  const following = createStore<FollowingState>()((set) => ({
    ready: true,
    following: Object.fromEntries((options.following ?? []).map((f) => [f.programmeId, f])),
    change: async (next) => {
      asked.push(['follow', next]);
      set((state) => ({ following: { ...state.following, [next.programmeId]: next } }));
    },
  }));
  const device = createStore<DeviceState>()(() => ({ ...DEVICE, ...options.device }));
  const updates = createStore<UpdatesState>()(() => ({
    offlineReady: true,
    waiting: false,
    apply: note('apply'),
    ...options.updates,
  }));
  const exporter: Exporter = {
    track: later('track'),
    save: later('save'),
    hear: async (piece, talk) => {
      asked.push(['hear', piece, talk]);
      return hearPiece(piece, talk, options.voice);
    },
    ...options.exporter,
  };
  const noted = (name: string, ...given: unknown[]) => void asked.push([name, ...given]);
  const received = fakeReceived(noted, options.received);
  const publishing = fakePublishing(noted, options.publishing);
  // One promise for all drawings, as the app's own.
  const workshop = Promise.resolve(fakeWorkshop(options.sheets ?? []));
  const board = Promise.resolve(fakeBoard(noted, options.board));
  const stores = { programmes, settings, pack, session, log, following, device, updates };
  const told = seenByTelling(options.telling?.people);
  let ids = 0;
  return {
    ...stores,
    exporter,
    clock: {
      now: () => options.now ?? Date.UTC(2027, 2, 8, 18, 30),
      zoneTime: () => options.zone ?? { offsetMinutes: 60, zone: 'Europe/Amsterdam' },
    },
    newId: () => `made-${++ids}`,
    received,
    publishing,
    workshop: () => workshop,
    board: () => board,
    telling: once(() => memoryTelling({ programmes, log }, options.telling ?? {}, told)),
    told,
    records: async () => fakeRecords(noted, options.records),
    asked,
  };
}
