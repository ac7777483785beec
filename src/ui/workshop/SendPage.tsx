import { useState } from 'react';
import { Link, useParams } from 'wouter';
import type { Sending } from '../../app/exchange-contract.ts';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { programmeSentence } from '../../copy/programme.ts';
import { desk, details, sendOwn as words } from '../../copy/workshop.ts';
import { pathText } from '../../domain/programme/path.ts';
import type { ProgrammeProblem } from '../../domain/programme/problem.ts';
import { Screen } from '../parts/Screen.tsx';
import { SendSheet } from '../parts/SendSheet.tsx';
import { SendSteps } from '../parts/SendSteps.tsx';
import { cellAt, deskAt, pageAt, sentAt, weekAt } from './addresses.ts';
import { useChangeLine } from './use-sent.ts';
import { placeOfPath } from './warning-place.ts';
import { useSheet, useWorkshopStore } from './workshop-context.tsx';

/** From the sheet to everything that it can be sent as, or what stands in the way and where. */
export function SendPage() {
  const { key = '' } = useParams();
  const open = useSheet(key);
  const store = useWorkshopStore();
  const [sending, setSending] = useState<Sending>();
  const proposed = useChangeLine(open?.sheet);
  if (open === undefined) return null;
  const toDesk = { href: deskAt(key), name: desk.back };
  if (sending !== undefined) return <SendSheet sending={sending} back={toDesk} />;
  const file = store.getState().file();
  if (!file.ok) return <NotYet open={open} problems={withUnread(open, file.error)} />;
  return (
    <SendSteps
      // The proposal comes with what was sent, which is read after the first drawing.
      key={proposed}
      programme={file.value}
      proposed={proposed}
      again={sentAt(open.sheet.id)}
      back={toDesk}
      onSending={setSending}
    />
  );
}

/** The file's own problems come first; sessions that cannot be read are told in the same breath. */
function withUnread(
  { readings }: OpenSheet,
  problems: readonly ProgrammeProblem[],
): readonly ProgrammeProblem[] {
  if (problems.some(({ code }) => code === 'plan')) return problems;
  const unread = readings.flatMap((groups, w) =>
    Object.entries(groups).flatMap(([group, cells]) =>
      cells.flatMap(({ problems: [plan] }, s): readonly ProgrammeProblem[] =>
        plan === undefined
          ? []
          : [{ code: 'plan', plan, path: pathText(['weeks', w, 'sessions', group, s]) }],
      ),
    ),
  );
  return [...problems, ...unread];
}

function NotYet({ open, problems }: { open: OpenSheet; problems: readonly ProgrammeProblem[] }) {
  return (
    <Screen title={words.notYet} back={{ href: deskAt(open.key), name: desk.back }}>
      <p>{words.notYetBody(problems.length)}</p>
      <ul className="bullets">
        {problems.map((problem) => {
          const { href, said } = whereIs(open, problem.path);
          return (
            <li key={`${problem.path} ${problem.code}`}>
              <Link href={href}>{said}</Link>: {programmeSentence(problem)}
            </li>
          );
        })}
      </ul>
    </Screen>
  );
}

/** The name of the field on the page of details; of the page, where the path has no field there. */
function detailOf(path: string): string {
  const group = /^groups\[(\d+)\]\.(name|for)$/.exec(path);
  if (group !== null) {
    const n = Number(group[1]) + 1;
    return group[2] === 'name' ? details.groupName(n) : details.groupFor(n);
  }
  return DETAILS[path] ?? desk.details;
}

const DETAILS: Readonly<Record<string, string>> = {
  title: details.name,
  'leader.name': details.leader,
  startDate: details.start,
  'goal.name': details.goal,
  'goal.distanceM': details.distance,
  'goal.date': details.goalDate,
};

function whereIs({ key, sheet }: OpenSheet, path: string): { href: string; said: string } {
  const { week, group, session } = placeOfPath(path);
  if (week === undefined) return { href: pageAt(key, 'details'), said: detailOf(path) };
  const named = sheet.groups.find(({ id }) => id === group);
  if (named === undefined) return { href: weekAt(key, week), said: desk.week(week + 1) };
  return {
    href: cellAt(key, { week, group: named.id, session: session ?? 0 }),
    said: desk.cell(
      week + 1,
      named.name,
      (session ?? 0) + 1,
      sheet.weeks[week]?.sessions[named.id]?.length ?? 1,
    ),
  };
}
