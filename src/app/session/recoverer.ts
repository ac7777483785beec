import type { LogEntry } from '../../domain/log/entry.ts';
import { entryOf } from '../../domain/log/entry-of.ts';
import { replay } from '../../domain/session/journal.ts';
import { closed, recoveryOf } from '../../domain/session/recovery.ts';
import { isWaiting, type Session } from '../../domain/session/session.ts';
import type { Clock, StoredJournal } from '../ports.ts';
import type { Unfinished } from '../session-contract.ts';
import { choiceOf } from './draft.ts';
import type { JournalKeeper } from './journal-keeper.ts';

/** What is done about sessions that were cut off. */
export interface Recoverer {
  /** Logs what can only be logged, and offers the newest of the rest. */
  look(journals: readonly StoredJournal[]): Promise<void>;
  /** The session that is offered. */
  found(): Session | undefined;
  /** What was done is kept as it is. */
  keepFound(): void;
  /** The session that was offered runs again. */
  taken(): void;
}

interface Needs {
  readonly clock: Clock;
  readonly keeper: JournalKeeper;
  /** Its entry is in the log already. */
  isLogged(session: string): boolean;
  /** Shows the entry and writes it. */
  log(entry: LogEntry): void;
  /** Lets a session go that never began. */
  forget(session: string): void;
  tell(unfinished: Unfinished | undefined): void;
}

/** Sessions that were cut off, from the journal. */
export function createRecoverer(needs: Needs): Recoverer {
  const { clock, keeper, isLogged, log, forget, tell } = needs;
  let offered: Session | undefined;

  function offer(session: Session | undefined, how?: Unfinished['offer']): void {
    offered = session;
    tell(session && how && unfinishedOf(session, how));
  }

  return {
    async look(journals) {
      const now = clock.now();
      const sessions = await readable(journals, keeper);
      for (const session of sessions.sort((a, b) => b.seenAt - a.seenAt)) {
        const what = recoveryOf(session, now);
        const offering = what === 'go-on' || what === 'keep' || what === 'wait';
        if (isLogged(session.about.id)) {
          // Only its journal was left, by a phone that died between the two.
          forget(session.about.id);
        } else if (offering && (offered === undefined || offered.about.id === session.about.id)) {
          offer(session, what);
        } else if (isWaiting(session) || what === 'forget') {
          forget(session.about.id);
        } else {
          log(entryOf(closed(session, what === 'save-finished' ? 'finished' : 'ended-early')));
        }
      }
    },
    found: () => offered,
    keepFound() {
      const session = offered;
      if (session === undefined) return;
      offer(undefined);
      if (isWaiting(session)) forget(session.about.id);
      else log(entryOf(closed(session, 'ended-early')));
    },
    taken: () => offer(undefined),
  };
}

/** Journals of sessions that no living tab runs, read back. */
async function readable(
  journals: readonly StoredJournal[],
  keeper: JournalKeeper,
): Promise<Session[]> {
  const sessions: Session[] = [];
  for (const { session: id, events } of journals) {
    if (await keeper.isElsewhere(id)) continue;
    const session = replay(events);
    if (session !== undefined) sessions.push(session);
  }
  return sessions;
}

const unfinishedOf = (session: Session, offer: Unfinished['offer']): Unfinished => ({
  choice: choiceOf(session.about),
  position: session.place,
  total: session.score.timeline.total,
  startedAt: session.about.startedAt,
  lastSeenAt: session.seenAt,
  offer,
});
