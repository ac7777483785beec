import { useState } from 'react';
import { Link, useParams } from 'wouter';
import { desk, details as words } from '../../copy/workshop.ts';
import { LIMITS } from '../../domain/programme/shape.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';
import { Screen } from '../parts/Screen.tsx';
import { deskAt } from './addresses.ts';
import { DateField, LineField } from './fields.tsx';
import { GroupList } from './GroupList.tsx';
import { Refused } from './Refused.tsx';
import { ReminderList } from './ReminderList.tsx';
import { Undo } from './UndoRedo.tsx';
import { useEdit, useSheet } from './workshop-context.tsx';

/** What a programme says of itself, its groups and its reminders. */
export function Details() {
  const { key = '' } = useParams();
  const open = useSheet(key);
  if (open === undefined) return null;
  const { sheet } = open;
  return (
    <Screen
      title={words.title}
      sub={sheet.title.trim() || desk.untitled}
      back={{ href: deskAt(key), name: desk.back }}
      foot={
        <div className="row details-foot">
          <Undo />
          <Link href={deskAt(key)} className="button primary">
            {words.onward}
          </Link>
        </div>
      }
    >
      <Refused />
      <About sheet={sheet} />
      <GroupList groups={sheet.groups} />
      <ReminderList reminders={sheet.reminders} />
    </Screen>
  );
}

function About({ sheet }: { sheet: Sheet }) {
  const edit = useEdit();
  return (
    <section className="stack">
      <LineField
        name={words.name}
        value={sheet.title}
        limit={LIMITS.title}
        onChange={(title) => edit({ kind: 'title', title })}
      />
      <LineField
        name={words.leader}
        value={sheet.leader}
        limit={LIMITS.name}
        onChange={(leader) => edit({ kind: 'leader', leader })}
      />
      <DateField
        name={words.start}
        value={sheet.startDate ?? ''}
        help={words.startHelp}
        onChange={(date) => edit({ kind: 'start-date', date })}
      />
      <LineField
        name={words.goal}
        value={sheet.goal.name}
        limit={LIMITS.name}
        onChange={(name) => edit({ kind: 'goal', name })}
      />
      <div className="pair">
        <Distance metres={sheet.goal.distanceM} />
        <DateField
          name={words.goalDate}
          value={sheet.goal.date ?? ''}
          onChange={(date) => edit({ kind: 'goal-date', date })}
        />
      </div>
    </section>
  );
}

const metresOf = (km: string): number => Math.round(Number(km) * 1000);
const isDistance = (metres: number): boolean => metres >= 1 && metres <= LIMITS.distanceM;

/** What is typed stays as typed while it is no distance yet, or another way to write the same. */
function Distance({ metres }: { metres: number }) {
  const edit = useEdit();
  const [typed, setTyped] = useState(String(metres / 1000));
  const isKept = !isDistance(metresOf(typed)) || metresOf(typed) === metres;
  return (
    <LineField
      name={words.distance}
      type="number"
      min="0.1"
      step="0.1"
      value={isKept ? typed : String(metres / 1000)}
      onChange={(value) => {
        setTyped(value);
        const distanceM = metresOf(value);
        if (isDistance(distanceM)) edit({ kind: 'goal', distanceM });
      }}
    />
  );
}
