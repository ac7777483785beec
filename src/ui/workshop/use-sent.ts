import { useEffect, useMemo } from 'react';
import { changeLine } from '../../copy/changes.ts';
import { desk as words } from '../../copy/workshop.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { readProgramme } from '../../domain/programme/read.ts';
import { changesBetween } from '../../domain/workshop/changes.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';
import { type WeekStanding, weekStanding } from '../../domain/workshop/standing.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { useDateAt } from '../parts/date-at.ts';

/** What was last sent of a programme, as participants have it; undefined: nothing was. */
export function useSent(sheet: Sheet | undefined): Programme | undefined {
  const publishing = useApp().publishing;
  useEffect(() => void publishing.getState().load(), [publishing]);
  const text = usePublishing((p) => (sheet === undefined ? undefined : p.sent[sheet.id]?.text));
  return useMemo(() => {
    if (text === undefined) return undefined;
    const read = readProgramme(text);
    return read.ok ? read.value : undefined;
  }, [text]);
}

/** A first wording of what changed since the last revision that went out; empty: nothing did. */
export function useChangeLine(sheet: Sheet | undefined): string {
  const sent = useSent(sheet);
  return useMemo(
    () =>
      sheet === undefined || sent === undefined
        ? ''
        : changeLine(changesBetween(sent, sheet), sheet),
    [sheet, sent],
  );
}

/** Week by week, what to say of how it stands to what was sent and to today. */
export function useStandings(sheet: Sheet): readonly string[] {
  const sent = useSent(sheet);
  const today = useDateAt()(useApp().clock.now());
  return useMemo(
    () => weekStanding(sent, sheet, today).map((each) => standingSaid(each, sent?.revision)),
    [sent, sheet, today],
  );
}

function standingSaid({ sent, time }: WeekStanding, revision: number | undefined): string {
  const when = time === 'past' ? words.past : time === 'now' ? words.now : '';
  if (revision === undefined) return when;
  const how = {
    same: words.sentIn,
    moved: words.movedSince,
    changed: words.changedSince,
    new: words.newSince,
  }[sent](revision);
  return [when, how].filter((part) => part !== '').join(', ');
}
