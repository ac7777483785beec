import { createStore, type StoreApi } from 'zustand/vanilla';
import { agreedStartOf } from '../../domain/lead/cut-off.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { entryOf } from '../../domain/log/entry-of.ts';
import { isUnderWay, isWaiting, type Session } from '../../domain/session/session.ts';
import { LONGEST_WAIT } from '../../domain/session/wait.ts';
import type { LogState, ProgrammesState, SettingsState } from '../contract.ts';
import { showEntries, showStoredEntries } from '../log.ts';
import type { PackHolder } from '../pack.ts';
import type { PlayerPorts, Ports, StoredJournal } from '../ports.ts';
import type { Led, SessionStore, SessionView } from '../session-contract.ts';
import { stamp } from './draft.ts';
import { IDLE_VIEW } from './idle-view.ts';
import { createJournalKeeper } from './journal-keeper.ts';
import { placeToLeadFrom, sessionFrom } from './lead-from.ts';
import { createLeadKeeper } from './lead-keeper.ts';
import { createNeighbours } from './neighbours.ts';
import { createPlayer } from './player.ts';
import { createPocketWatcher } from './pocket-watcher.ts';
import { createPreparer, type Wanted, wantedOf } from './preparer.ts';
import { createRecorder } from './recorder.ts';
import { createRecoverer } from './recoverer.ts';
import { createSampler } from './sampler.ts';
import { createTeller } from './teller.ts';
import { viewOf } from './view.ts';
import { createWake } from './wake.ts';
import { wishesOf } from './wishes-of.ts';

/** What the session needs of its neighbours. */
export interface SessionNeeds {
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: StoreApi<SettingsState>;
  readonly pack: PackHolder;
  readonly log: StoreApi<LogState>;
}

/** The session's store, and what only the app asks of it. */
export interface SessionPart {
  readonly store: StoreApi<SessionStore>;
  /** Looks at what an earlier run of the app left behind. */
  found(journals: readonly StoredJournal[]): Promise<void>;
}

/** The one session of this tab: prepared, run, recovered, and told to the screens. */
export function createSession(ports: Ports & PlayerPorts, needs: SessionNeeds): SessionPart {
  const { clock, store: db, device, updates } = ports;
  let unsaved = false;
  let awake = false;

  // One that is over only waits to be written; whether another tab has it, the writing will tell.
  const keeper = createJournalKeeper(ports, ports.newId(), () => {
    if (underWay()) leave();
  });
  const recorder = createRecorder({
    clock,
    db,
    keeper,
    tell(now) {
      unsaved = now;
      teller.refresh();
    },
    refused: leave,
  });
  const wake = createWake(device, underWay);
  const pocket = createPocketWatcher(clock, ports, needs.settings);
  const sampler = createSampler(ports.sound, needs.pack);
  const leading = createLeadKeeper(ports.leadNote, led, (ledBefore) =>
    store.setState({ ledBefore } as Partial<SessionStore>),
  );
  const player = createPlayer(clock, {
    write(event, strict) {
      const purpose = player.session?.about.purpose;
      if (purpose === 'session') recorder.write(event, strict);
      if (purpose === 'lead' && strict && player.session) leading.mark(player.session);
    },
    stayAwake: wake.see,
    boundary(change) {
      if (needs.settings.getState().settings.vibration) device.vibrate(change);
    },
    ended,
    left,
    changed(signal) {
      if (signal !== undefined) pocket.hear(signal, player);
      teller.refresh(signal);
    },
  });
  const preparer = createPreparer({
    clock,
    ...needs,
    player,
    transportOf: (medium) => (medium === 'sound' ? ports.sound : ports.screen),
    clear() {
      sampler.stop();
      teller.clear();
    },
    changed: () => teller.refresh(),
  });
  const teller = createTeller({
    clock,
    lockScreen: ports.lockScreen,
    current: () => ({ view: currentView(), session: player.session }),
    shown: () => store.getState().view,
    show: (view) => store.setState({ view }),
  });
  const neighbours = createNeighbours({
    clock,
    keeper,
    runsHere: underWay,
    changed: () => teller.refresh(),
    freed,
  });
  const recoverer = createRecoverer({
    clock,
    keeper,
    isLogged: (session) => needs.log.getState().entries.some(({ id }) => id === session),
    log,
    forget: recorder.forget,
    tell: (unfinished) => store.setState({ unfinished } as Partial<SessionStore>),
  });

  device.onAwake((now) => {
    awake = now;
    teller.refresh();
  });

  function led(): Led | undefined {
    const { wanted } = preparer;
    return wanted?.purpose === 'lead' ? wanted.led : undefined;
  }

  function underWay(): boolean {
    return player.session !== undefined && isUnderWay(player.session);
  }

  function currentView(): SessionView {
    const { wanted, prepared } = preparer;
    const anyway = { unsaved, awake, busyElsewhere: neighbours.busy };
    const { session } = player;
    if (session !== undefined && prepared !== undefined) {
      const at = { now: clock.now(), track: player.track(), captions: prepared.captions };
      return viewOf(session, { ...anyway, ...at, choice: wanted?.choice, lead: led() });
    }
    if (wanted === undefined) return { ...IDLE_VIEW, ...anyway };
    const { purpose, medium, choice } = wanted;
    const lead = led();
    return {
      ...IDLE_VIEW,
      ...anyway,
      state: 'composing',
      purpose,
      medium,
      ...(choice && { choice }),
      ...(lead && { lead }),
    };
  }

  async function want(next: Wanted): Promise<void> {
    if (underWay()) return;
    preparer.want(next);
    await neighbours.look();
  }

  /** The start that groups still wait for whose leader was cut off. */
  function agreedBefore(): number | undefined {
    const from = led()?.from;
    return from && agreedStartOf(from, clock.now());
  }

  /** Inside a tap: sound begins at once, and what is written waits for the right to write it. */
  function start(at = agreedBefore()): void {
    if (player.session?.name !== 'ready' || neighbours.busy) return;
    const ahead = at === undefined ? 0 : at - clock.now();
    if (ahead > LONGEST_WAIT) return;
    const startsAt = ahead > 0 ? at : undefined;
    // The sample took the place of the track, or a wait comes before it: composed anew in the tap,
    // which takes a few hundredths of a second.
    if (sampler.stop() || startsAt !== undefined) preparer.make(startsAt);
    const { session } = player;
    const { draft, prepared } = preparer;
    if (session === undefined || draft === undefined || prepared === undefined) return;
    recoverer.keepFound();
    const about = stamp(draft.about, ports.newId(), clock, startsAt);
    begin(about.id);
    const from = led()?.from;
    if (from === undefined || startsAt !== undefined) {
      player.start({ about, score: prepared.score, medium: session.medium });
      return;
    }
    const place = placeToLeadFrom(from, prepared.score.timeline.total, clock.now());
    player.recover(sessionFrom({ ...session, about }, place, clock.now()));
    player.wish('go-on');
  }

  function begin(id: string): void {
    store.setState({ entryId: undefined } as unknown as Partial<SessionStore>);
    updates.setBusy(true);
    void recorder.begin(id).then((mine) => {
      if (!mine) leave();
    });
  }

  /** Another tab has the session: this one falls silent and writes nothing more. */
  function leave(): void {
    if (neighbours.busy) return;
    recorder.drop();
    if (player.session !== undefined) keeper.release(player.session.about.id);
    wake.stop();
    updates.setBusy(false);
    preparer.make();
    neighbours.tookOver();
  }

  function ended(session: Session): void {
    updates.setBusy(false);
    wake.look();
    if (session.about.purpose === 'session') {
      // Asked for when there is something to keep: some browsers ask the person.
      void device.persist();
      log(entryOf(session));
      store.setState({ entryId: session.about.id });
    } else {
      if (session.about.purpose === 'lead') leading.over();
      else pocket.ended(session);
      keeper.release(session.about.id);
      void db.dropLease(keeper.tab);
    }
  }

  /** A wait that was left: the session is ready again, without a word in the log. */
  function left({ about }: Session): void {
    leading.over();
    updates.setBusy(false);
    wake.stop();
    recorder.forget(about.id);
    preparer.make();
  }

  function log(entry: LogEntry): void {
    showEntries(needs.log, [entry]);
    recorder.close(entry);
  }

  /** The other tab is gone: its session is in the log, or waits to be gone on with. */
  async function freed(): Promise<void> {
    const all = await db.load();
    if (!all.ok) return;
    showStoredEntries(needs.log, all.value.log);
    await recoverer.look(all.value.journals);
  }

  async function recover(answer: 'go-on' | 'keep'): Promise<void> {
    const session = recoverer.found();
    if (session === undefined || underWay()) return;
    if (answer === 'keep') {
      recoverer.keepFound();
      if (!isWaiting(session)) store.setState({ entryId: session.about.id });
      return;
    }
    // No waiting where nothing is waited for: the sound is to begin inside the tap.
    const coming = session.medium === 'sound' ? needs.pack.settled() : undefined;
    if (coming !== undefined) await coming;
    if (underWay() || recoverer.found() !== session) return;
    recoverer.taken();
    preparer.remake(session);
    begin(session.about.id);
    player.recover(session);
    // A start that has passed is told, and how to go on from there is the person's choice.
    if (!isWaiting(session) || clock.now() < session.about.startedAt) player.wish('go-on');
  }

  const store = createStore<SessionStore>(() => ({
    view: IDLE_VIEW,
    prepare: (what, medium) => want(wantedOf(what, medium)),
    preparePocketCheck: () => want({ purpose: 'pocket-check', medium: 'sound' }),
    start,
    playCueNow: () => {
      if (!underWay()) sampler.play();
    },
    ...wishesOf((type) => {
      if (underWay()) player.wish(type);
    }),
    watch: wake.watch,
    recover,
    close: () => {
      if (underWay()) return;
      // What was cut off is not gone on with.
      if (led()?.from !== undefined) leading.over();
      preparer.forget();
    },
  }));

  return {
    store,
    async found(journals) {
      leading.look();
      await recoverer.look(journals);
      await neighbours.look();
    },
  };
}
