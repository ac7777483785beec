import type { StoreApi } from 'zustand/vanilla';
import { readySession } from '../../domain/session/reduce.ts';
import { isWaiting, type Session } from '../../domain/session/session.ts';
import { ms } from '../../domain/units.ts';
import type { ProgrammesState, SettingsState } from '../contract.ts';
import type { PackHolder } from '../pack.ts';
import type { Clock, Transport } from '../ports.ts';
import type { Choice, Led, Medium } from '../session-contract.ts';
import { choiceOf, type Draft, draftOf, leadDraft, pocketDraft, stamp } from './draft.ts';
import type { Player } from './player.ts';
import { type Prepared, pocketTimeline, prepareScore } from './score-plan.ts';

/** What was asked for: a session of a programme, one that is led, or the pocket check. */
export type Wanted =
  | { readonly purpose: 'session'; readonly choice: Choice; readonly medium: Medium }
  | {
      readonly purpose: 'lead';
      readonly choice?: undefined;
      readonly led: Led;
      readonly medium: Medium;
    }
  | { readonly purpose: 'pocket-check'; readonly choice?: undefined; readonly medium: 'sound' };

/** What was asked for by a choice, or by what is led. */
export const wantedOf = (what: Choice | Led, medium: Medium): Wanted =>
  'plan' in what
    ? { purpose: 'lead', led: what, medium }
    : { purpose: 'session', choice: what, medium };

/** Makes what is wanted ready, as soon as everything for it is here. */
export interface Preparer {
  readonly wanted: Wanted | undefined;
  readonly draft: Draft | undefined;
  readonly prepared: Omit<Prepared, 'bytes'> | undefined;
  /** Composes what is wanted from now on. The same again changes nothing. */
  want(next: Wanted): void;
  /** Composes anew; with a wait before it when the start (UTC milliseconds) is yet to come. */
  make(startsAt?: number): void;
  /** Composes the rest of a session that was cut off, by its own timeline. */
  remake(session: Session): void;
  forget(): void;
}

interface Needs {
  readonly clock: Clock;
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: StoreApi<SettingsState>;
  readonly pack: PackHolder;
  readonly player: Player;
  transportOf(medium: Medium): Transport;
  /** Before another track takes the place of the one that is loaded. */
  clear(): void;
  changed(): void;
}

/** Composes for a player, and anew when voice, programmes or settings change before the start. */
export function createPreparer(needs: Needs): Preparer {
  const { player, pack } = needs;
  let wanted: Wanted | undefined;
  let draft: Draft | undefined;
  let prepared: Omit<Prepared, 'bytes'> | undefined;

  function draftFor(what: Wanted): Draft | undefined {
    if (what.purpose === 'session') {
      return draftOf(needs.programmes.getState().programmes, what.choice);
    }
    if (what.purpose === 'lead') return leadDraft(what.led);
    const voice = pack.current();
    return voice && pocketDraft(pocketTimeline(voice));
  }

  function arm(what: Draft, medium: Medium, startsAt?: number, id = ''): void {
    const { about, timeline, reminders } = what;
    const { purpose, target } = about;
    const { talk } = needs.settings.getState().settings;
    const left = startsAt === undefined ? 0 : startsAt - needs.clock.now();
    const ahead = left > 0 ? ms(left) : undefined;
    const lead = wanted?.purpose === 'lead' ? wanted.led.plan : undefined;
    const wish = { purpose, medium, timeline, talk, reminders, target, ahead, lead };
    // The bytes are the element's from here on: two hours of them are not to be kept twice.
    const { bytes, ...rest } = prepareScore(wish, pack.current());
    prepared = rest;
    const ready = readySession(stamp(about, id, needs.clock), rest.score, medium);
    player.arm(ready, needs.transportOf(medium), bytes);
  }

  function make(startsAt?: number): void {
    if (wanted === undefined) return;
    empty();
    draft = draftFor(wanted);
    const { medium } = wanted;
    if (draft !== undefined && (medium === 'screen' || pack.current() !== undefined)) {
      arm(draft, medium, startsAt);
    }
    needs.changed();
  }

  function empty(): void {
    needs.clear();
    player.disarm();
    draft = undefined;
    prepared = undefined;
  }

  const isReady = (): boolean => player.session?.name === 'ready';
  const waits = (): boolean => wanted !== undefined && player.session === undefined;

  pack.store.subscribe((now) => {
    if (now.pack.name === 'ready' && waits()) make();
  });
  needs.programmes.subscribe(() => {
    if (waits()) make();
  });
  needs.settings.subscribe(({ settings }, before) => {
    if (settings.talk !== before.settings.talk && isReady()) make();
  });

  return {
    get wanted() {
      return wanted;
    },
    get draft() {
      return draft;
    },
    get prepared() {
      return prepared;
    },
    want(next) {
      const again = JSON.stringify(wanted) === JSON.stringify(next) && isReady();
      wanted = next;
      if (again) needs.changed();
      else make();
    },
    make,
    remake(session) {
      const { about, medium, score } = session;
      const { programmes } = needs.programmes.getState();
      const { reminders = [] } = programmes.find(({ id }) => id === about.programme.id) ?? {};
      // Without a voice the rest can still be watched.
      const usable = pack.current() === undefined ? 'screen' : medium;
      empty();
      wanted = { purpose: 'session', choice: choiceOf(about), medium: usable };
      draft = { about, timeline: score.timeline, reminders };
      arm(draft, usable, isWaiting(session) ? about.startedAt : undefined, about.id);
    },
    forget() {
      wanted = undefined;
      empty();
      needs.changed();
    },
  };
}
