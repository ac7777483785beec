import { useState } from 'react';
import { boardProblem } from '../../copy/keep.ts';
import type { Attendance } from '../../domain/board/attendance.ts';
import { useBoardStore } from './board-context.tsx';
import type { Which } from './list-day.ts';
import { type Listed, tickedAs } from './list-people.ts';

/** What the attendance list can ask and do about the ticks of its day. */
export interface Marks {
  /** Whether somebody is ticked: as it was tapped, or as it is kept. */
  readonly isThere: (who: Listed) => boolean;
  readonly tick: (who: Listed, present: boolean) => void;
  /** Says anew which session it was, where somebody is ticked already. */
  readonly said: (which: Which) => void;
  /** What could not be kept, in a sentence; empty: everything was. */
  readonly problem: string;
}

/** Ticks of one day. Each is written at once; until it is, the tap is what shows. */
export function useMarks(
  programmeId: string,
  date: string,
  which: Which,
  day: Attendance | undefined,
): Marks {
  const store = useBoardStore();
  const [tapped, setTapped] = useState<Readonly<Record<string, boolean>>>({});
  const [problem, setProblem] = useState('');
  const keyOf = (person: string) => `${date} ${person}`;

  async function write(person: string, ids: readonly string[], present: boolean, to: Which) {
    const key = keyOf(person);
    setTapped((before) => ({ ...before, [key]: present }));
    for (const id of ids) {
      const kept = await store.getState().mark(programmeId, { date, ...to }, id, present);
      setProblem(kept.ok ? '' : boardProblem(kept.error));
      if (!kept.ok) break;
    }
    // A later tap of the same person waits for its own writing.
    setTapped(({ [key]: last, ...others }) =>
      last === undefined || last === present ? others : { ...others, [key]: last },
    );
  }

  return {
    problem,
    isThere: (who) => tapped[keyOf(who.person)] ?? tickedAs(who, day).length > 0,
    tick(who, present) {
      const ids = present ? [who.person] : tickedAs(who, day);
      void write(who.person, ids.length === 0 ? [who.person] : ids, present, which);
    },
    said(to) {
      const [first] = Object.entries(day?.marks ?? {});
      if (first !== undefined) void write(first[0], [first[0]], first[1].present, to);
    },
  };
}
