import type { LogEntry } from '../../domain/log/entry.ts';
import { fail, ok } from '../../domain/result.ts';
import type { SessionEvent } from '../../domain/session/event.ts';
import type { Clock, Store } from '../ports.ts';
import { createQueue, type Queue, type Write } from '../queue.ts';
import type { JournalKeeper } from './journal-keeper.ts';

/** Writes the sessions of this tab: each in a queue of its own, so that none waits for another. */
export interface Recorder {
  /** A session begins to run here. False when another tab has the right to run one. */
  begin(session: string): Promise<boolean>;
  write(event: SessionEvent, strict: boolean): void;
  /** Entry in, journal out, once everything before has been written. */
  close(entry: LogEntry): void;
  /** Journal out, and no entry: a session that never began. */
  forget(session: string): void;
  /** What the session that runs here has not written is forgotten: another tab has it. */
  drop(): void;
}

interface Needs {
  readonly clock: Clock;
  readonly db: Store;
  readonly keeper: JournalKeeper;
  /** Whether something waits that could not be written. */
  tell(unsaved: boolean): void;
  /** Another tab writes this session now. */
  refused(): void;
}

interface Book {
  readonly session: string;
  readonly queue: Queue;
  /** The lease was asked for; nothing is written before the answer. */
  readonly right: Promise<boolean>;
  /** Its entry is on the way, and may come to the log before the last events, with what was felt. */
  closing?: true;
}

/** Writes to the phone's database, by the right that the keeper gives. */
export function createRecorder({ clock, db, keeper, tell, refused }: Needs): Recorder {
  const troubled = new Set<string>();
  let book: Book | undefined;

  function newBook(session: string): Book {
    const trouble = (is: boolean): void => {
      if (is) troubled.add(session);
      else troubled.delete(session);
      tell(troubled.size > 0);
    };
    const onRefused = (): void => {
      if (book?.session === session) refused();
    };
    return {
      session,
      queue: createQueue(clock, trouble, onRefused),
      right: keeper.take(session),
    };
  }

  const push = ({ queue, right, session }: Book, write: Write): void => {
    void queue.push(async () =>
      (await right) ? write() : fail({ code: 'not-ours', detail: session } as const),
    );
  };

  function end(session: string, entry: LogEntry | undefined): void {
    const current = book?.session === session ? book : newBook(session);
    current.closing = true;
    push(current, async () => {
      const closed = await db.closeSession(session, keeper.tab, entry);
      if (closed.ok) keeper.release(session);
      return closed;
    });
  }

  return {
    begin(session) {
      book = newBook(session);
      return book.right;
    },
    write(event, strict) {
      const current = book;
      if (current === undefined) return;
      push(current, async () => {
        const written = await db.append(current.session, keeper.tab, [event], strict);
        // Refused because the entry is there already: whether it is ours, closing will tell.
        const isLate = !written.ok && written.error.code === 'not-ours' && current.closing;
        return isLate ? ok(undefined) : written;
      });
    },
    close: (entry) => end(entry.id, entry),
    forget: (session) => end(session, undefined),
    drop() {
      book?.queue.drop();
      book = undefined;
    },
  };
}
