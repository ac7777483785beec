import type { Introduction, TellingPerson } from '../../app/tell-contract.ts';
import { type Telling, tidyName, untold } from '../../domain/exchange/tell.ts';
import type { LogEntry } from '../../domain/log/entry.ts';

/** What the person has decided so far; nothing: not touched, so what is usual holds. */
export interface Touched {
  readonly ids?: readonly string[];
  readonly niggles?: boolean;
  readonly warningSigns?: boolean;
  readonly notes?: boolean;
  readonly nameAlong?: boolean;
  readonly name?: string;
  readonly under16?: boolean;
  readonly guardian?: boolean;
}

/** The form of telling: each answer, touched or usual, and what is to go out because of it. */
export interface Choosing extends Required<Touched> {
  /** What of the chosen sessions could go along. */
  readonly has: {
    readonly niggles: boolean;
    readonly warningSigns: boolean;
    readonly notes: boolean;
  };
  readonly telling: Telling;
  readonly introduction: Introduction;
  change(part: Touched): void;
}

interface Given {
  /** Of this programme, newest first. */
  readonly entries: readonly LogEntry[];
  readonly person: TellingPerson;
  /** It would go as a message that anyone can read. */
  readonly isPlain: boolean;
  /** Kept above the form, so that it is there again after a look at what would be sent. */
  readonly touched: Touched;
  readonly onTouch: (touched: Touched) => void;
}

/**
 * What goes along, and what is usual: sessions that were not told, the name, and what hurt, because
 * a leader can act on it. Notes were written for oneself and are never usual; where anyone can
 * read, nothing of the body is; younger than 16, no name.
 */
export function choosingOf({ entries, person, isPlain, touched, onTouch }: Given): Choosing {
  const under16 = touched.under16 ?? person.under16;
  const {
    ids = untold(entries, person.told),
    niggles = !isPlain,
    warningSigns = !isPlain,
  } = touched;
  const { notes = false, nameAlong = !under16, name = person.name, guardian = false } = touched;
  const chosen = entries.filter(({ id }) => ids.includes(id));
  const has = {
    niggles: chosen.some(({ feeling }) => feeling.niggle !== undefined),
    warningSigns: chosen.some(({ feeling }) => feeling.warningSign === true),
    notes: chosen.some(({ feeling }) => feeling.note !== undefined),
  };
  const called = tidyName(name);
  return {
    ...{ ids, niggles, warningSigns, notes, nameAlong, name, under16, guardian, has },
    telling: {
      ids,
      niggles,
      warningSigns,
      notes,
      ...(nameAlong && called !== '' ? { name: called } : {}),
    },
    introduction: { name: called, under16 },
    change(part) {
      // Saying one's age puts name and notes back to what is usual at that age.
      const { nameAlong: _name, notes: _notes, guardian: _guardian, ...rest } = touched;
      onTouch({ ...(part.under16 === undefined ? touched : rest), ...part });
    },
  };
}
