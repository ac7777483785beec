import { createStore, type StoreApi } from 'zustand/vanilla';
import type { LogEntry } from '../../domain/log/entry.ts';
import { entryOf } from '../../domain/log/entry-of.ts';
import type { Wish } from '../../domain/session/event.ts';
import { readySession } from '../../domain/session/reduce.ts';
import { isUnderWay, type Session } from '../../domain/session/session.ts';
import type {
  Choice,
  LogState,
  Medium,
  ProgrammesState,
  SessionStore,
  SessionView,
  SettingsState,
} from '../contract.ts';
import { showEntries } from '../log.ts';
import type { PackHolder } from '../pack.ts';
import type { Ports, Signal, StoredJournal } from '../ports.ts';
import { createQueue } from '../queue.ts';
import { choiceOf, type Draft, draftOf, pocketDraft, stamp } from './draft.ts';
import { IDLE_VIEW } from './idle-view.ts';
import { createKeeper } from './keeper.ts';
import { nowPlaying } from './now-playing.ts';
import { createPlayer } from './player.ts';
import { createPocketWatcher } from './pocket-watcher.ts';
import { createRecoverer } from './recoverer.ts';
import { createSampler } from './sampler.ts';
import { type Prepared, pocketTimeline, prepareScore } from './score-plan.ts';
import { looksSame, viewOf } from './view.ts';

/** What the session needs of its neighbours. */
export interface Around {
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: StoreApi<SettingsState>;
  readonly pack: PackHolder;
  readonly log: StoreApi<LogState>;
}

/** What was asked for: a session of a programme, or the pocket check. */
type Wanted =
  | { readonly purpose: 'session'; readonly choice: Choice; readonly medium: Medium }
  | { readonly purpose: 'pocket-check'; readonly choice?: undefined; readonly medium: 'sound' };

export interface SessionPart {
  readonly store: StoreApi<SessionStore>;
  /** Looks at what an earlier run of the app left behind. */
  found(journals: readonly StoredJournal[]): Promise<void>;
}

/** The one session of this tab: prepared, run, recovered, and told to the screens. */
export function createSession(ports: Ports, around: Around): SessionPart {
  const { clock, store: db, device, lockScreen, updates } = ports;
  let wanted: Wanted | undefined;
  let draft: Draft | undefined;
  let prepared: Prepared | undefined;
  /** The session may run here: answered once the lease was asked for. */
  let mine: Promise<boolean> = Promise.resolve(true);
  let hidden = false;
  let unsaved = false;
  let awake = false;
  let elsewhere = false;
  let shownTitle = '';

  const queue = createQueue(
    clock,
    (trouble) => {
      unsaved = trouble;
      refresh();
    },
    leave,
  );
  const keeper = createKeeper(ports, ports.newId(), leave);
  const pocket = createPocketWatcher(clock, ports, around.settings);
  const sampler = createSampler(ports.sound, around.pack);
  const player = createPlayer(clock, {
    write: (event, strict) => {
      const session = player.session;
      if (session?.about.purpose !== 'session') return;
      const { id } = session.about;
      // The lease comes first: what another tab runs is never written to.
      queue.push(async () =>
        (await mine) ? db.append(id, keeper.tab, [event], strict) : notOurs(id),
      );
    },
    stayAwake: device.stayAwake,
    boundary: (change) => {
      if (around.settings.getState().settings.vibration) device.vibrate(change);
    },
    ended,
    changed,
  });

  const notOurs = (id: string) => ({ ok: false, error: { code: 'not-ours', detail: id } }) as const;

  // ---- telling the screens -------------------------------------------------------------------

  function changed(signal: Signal | undefined): void {
    if (signal === 'hidden') hidden = true;
    if (signal === 'woke') hidden = false;
    if (signal !== undefined) pocket.hear(signal, player);
    refresh();
  }

  function currentView(): SessionView {
    const session = player.session;
    const busyElsewhere = elsewhere;
    if (session === undefined || prepared === undefined) {
      const state = wanted === undefined ? 'idle' : 'composing';
      return { ...IDLE_VIEW, ...shownDraft(), state, unsaved, busyElsewhere };
    }
    return viewOf(session, {
      now: clock.now(),
      track: player.track(),
      captions: prepared.captions,
      choice: wanted?.choice ?? (session.about.purpose === 'session' ? choice(session) : undefined),
      unsaved,
      awake,
      busyElsewhere,
    });
  }

  /** The same object for the same session, so that a view does not seem to change. */
  let chosen: Choice | undefined;
  function choice(session: Session): Choice {
    const now = choiceOf(session.about);
    if (chosen === undefined || JSON.stringify(chosen) !== JSON.stringify(now)) chosen = now;
    return chosen;
  }

  function shownDraft(): Partial<SessionView> {
    if (wanted === undefined) return {};
    const { purpose, medium } = wanted;
    return { purpose, medium, ...(wanted.choice && { choice: wanted.choice }) };
  }

  function refresh(): void {
    const before = store.getState().view;
    const view = currentView();
    const sameStretch =
      before.state === view.state &&
      before.lane === view.lane &&
      before.segment?.index === view.segment?.index;
    // Nobody looks: only what the lock screen says is worth the work.
    if (hidden && sameStretch && before.gap === view.gap) return;
    if (!looksSame(before, view)) store.setState({ view });
    if (player.session !== undefined) showOnLockScreen(view, player.session);
  }

  function showOnLockScreen(view: SessionView, session: Session): void {
    if (session.name === 'ready' || session.medium === 'screen') return;
    const now = nowPlaying(view);
    const key = JSON.stringify([now, view.state, view.lane]);
    if (key === shownTitle) return;
    shownTitle = key;
    lockScreen.show(now);
    lockScreen.place(view.position, session.score.timeline.total, session.name === 'running');
  }

  // ---- getting ready -------------------------------------------------------------------------

  const underWay = (): boolean => player.session !== undefined && isUnderWay(player.session);

  async function want(next: Wanted): Promise<void> {
    if (underWay()) return;
    const again =
      JSON.stringify(wanted) === JSON.stringify(next) && player.session?.name === 'ready';
    wanted = next;
    if (!again) make();
    await lookElsewhere();
  }

  /** Composes what is wanted, once everything for it is here. */
  function make(): void {
    if (underWay() || wanted === undefined) return;
    forget();
    const pack = around.pack.current();
    draft = draftFor(wanted);
    if (draft !== undefined && (pack !== undefined || wanted.medium === 'screen')) {
      const { talk } = around.settings.getState().settings;
      const { about, timeline, reminders } = draft;
      const { medium, purpose } = wanted;
      const { target } = about;
      prepared = prepareScore({ purpose, medium, timeline, talk, reminders, target }, pack);
      const ready = readySession(stamp(about, '', clock), prepared.score, medium);
      player.arm(ready, transportOf(medium), prepared.bytes);
    }
    refresh();
  }

  function draftFor(what: Wanted): Draft | undefined {
    if (what.purpose === 'session') {
      return draftOf(around.programmes.getState().programmes, what.choice);
    }
    const pack = around.pack.current();
    return pack && pocketDraft(pocketTimeline(pack));
  }

  const transportOf = (medium: Medium) => (medium === 'sound' ? ports.sound : ports.screen);

  function forget(): void {
    sampler.stop();
    player.disarm();
    prepared = undefined;
    shownTitle = '';
    lockScreen.clear();
  }

  around.pack.store.subscribe(({ pack }) => {
    if (pack.name === 'ready' && player.session === undefined) make();
  });
  around.programmes.subscribe(() => {
    if (wanted !== undefined && player.session === undefined) make();
  });
  around.settings.subscribe(({ settings }, before) => {
    if (settings.talk !== before.settings.talk && player.session?.name === 'ready') make();
  });
  device.onAwake((now) => {
    awake = now;
    refresh();
  });

  // ---- running -------------------------------------------------------------------------------

  function start(): void {
    const { session } = player;
    if (session?.name !== 'ready' || draft === undefined || prepared === undefined) return;
    if (elsewhere) return;
    sampler.stop(() => ports.sound.load({ ...prepared, total: session.score.layout.total }));
    const about = stamp(draft.about, ports.newId(), clock);
    recoverer.keepFound();
    begin(about.id);
    player.start({ about, score: prepared.score, medium: session.medium });
  }

  /** Sound may begin at once; what is written waits for the right to write it. */
  function begin(id: string): void {
    store.setState({ entryId: undefined } as unknown as Partial<SessionStore>);
    updates.setBusy(true);
    void device.persist();
    mine = keeper.take(id);
    void mine.then((taken) => {
      if (!taken) leave();
    });
  }

  /** Another tab has the session: this one falls silent and writes nothing more. */
  function leave(): void {
    if (elsewhere) return;
    queue.drop();
    keeper.release();
    device.stayAwake(false);
    updates.setBusy(false);
    forget();
    elsewhere = true;
    make();
    refresh();
    watchElsewhere();
  }

  function ended(session: Session): void {
    updates.setBusy(false);
    if (session.about.purpose === 'pocket-check') {
      pocket.ended(session);
      keeper.release();
      queue.push(() => db.dropLease(keeper.tab));
      return;
    }
    const entry = entryOf(session);
    log(entry);
    queue.push(async () => {
      if (!(await mine)) return notOurs(entry.id);
      const closed = await db.closeSession(entry.id, keeper.tab, entry);
      if (closed.ok) keeper.release();
      return closed;
    });
  }

  function log(entry: LogEntry): void {
    showEntries(around.log, [entry]);
    store.setState({ entryId: entry.id });
  }

  // ---- other tabs, other times ---------------------------------------------------------------

  const recoverer = createRecoverer({
    clock,
    db,
    keeper,
    queue,
    log,
    tell: (unfinished) => store.setState({ unfinished } as Partial<SessionStore>),
  });

  let stopLooking: (() => void) | undefined;

  async function lookElsewhere(): Promise<void> {
    const before = elsewhere;
    elsewhere = !underWay() && (await keeper.isElsewhere());
    if (elsewhere !== before) refresh();
    if (elsewhere) watchElsewhere();
    else if (before) await catchUpWithOthers();
  }

  /** Until the other tab is done or dead. */
  function watchElsewhere(): void {
    stopLooking ??= clock.every(5000, () => {
      if (!elsewhere) {
        stopLooking?.();
        stopLooking = undefined;
      } else void lookElsewhere();
    });
  }

  /** The other tab is gone: its session is in the log, or waits to be gone on with. */
  async function catchUpWithOthers(): Promise<void> {
    const all = await db.load();
    if (!all.ok) return;
    showEntries(around.log, all.value.log);
    await found(all.value.journals);
  }

  async function found(journals: readonly StoredJournal[]): Promise<void> {
    await recoverer.look(journals);
    await lookElsewhere();
  }

  async function recover(answer: 'go-on' | 'keep'): Promise<void> {
    const session = recoverer.found();
    if (session === undefined || underWay()) return;
    if (answer === 'keep') return recoverer.keepFound();
    forget();
    const { about, score, medium } = session;
    const { programmes } = around.programmes.getState();
    const reminders = programmes.find(({ id }) => id === about.programme.id)?.reminders ?? [];
    const { talk } = around.settings.getState().settings;
    const pack = around.pack.current();
    const { purpose, target } = about;
    const usable = medium === 'sound' && pack === undefined ? 'screen' : medium;
    const wish = { purpose, medium: usable, timeline: score.timeline, talk, reminders, target };
    wanted = { purpose: 'session', choice: choiceOf(about), medium: usable };
    prepared = prepareScore(wish, pack);
    recoverer.taken();
    player.arm(readySession(about, prepared.score, usable), transportOf(usable), prepared.bytes);
    begin(about.id);
    player.recover(session);
    player.wish('go-on');
  }

  // ---- what the screens may ask --------------------------------------------------------------

  const wish = (type: Wish) => (): void => {
    if (underWay()) player.wish(type);
  };

  const store = createStore<SessionStore>(() => ({
    view: IDLE_VIEW,
    prepare: (choice, medium) => want({ purpose: 'session', choice, medium }),
    preparePocketCheck: () => want({ purpose: 'pocket-check', medium: 'sound' }),
    start,
    playCueNow: () => {
      if (!underWay()) sampler.play();
    },
    hold: wish('hold'),
    goOn: wish('go-on'),
    oneMore: wish('one-more'),
    walkNow: wish('walk-now'),
    skip: wish('skip'),
    back: wish('back'),
    undo: wish('undo'),
    toCoolDown: wish('cool-down'),
    end: wish('end'),
    somethingIsWrong: wish('wrong'),
    allRight: wish('all-right'),
    afterGap: (answer) => wish(answer === 'go-on' ? 'leave-gap' : 'catch-up')(),
    recover,
    close() {
      if (underWay()) return;
      wanted = undefined;
      draft = undefined;
      forget();
      refresh();
    },
  }));

  return { store, found };
}
