import { useParams } from 'wouter';
import { desk } from '../../copy/workshop.ts';
import { NotHere } from '../parts/NotHere.tsx';
import { cellAt, placeAt } from './addresses.ts';
import { Hear } from './Hear.tsx';
import { useSheet } from './workshop-context.tsx';

/** A session of the open sheet, heard from cue to cue as it is written now. */
export function HearPage() {
  const { key = '', week, group, session } = useParams();
  const open = useSheet(key);
  const at = placeAt(week, group, session);
  if (open === undefined) return null;
  const { sheet, readings } = open;
  const named = sheet.groups.find(({ id }) => id === group);
  const plan = at && readings[at.week]?.[at.group]?.[at.session]?.plan;
  const found = at && sheet.weeks[at.week];
  if (at === undefined || plan === undefined || named === undefined || found === undefined)
    return <NotHere />;
  const sessions = found.sessions[at.group]?.length ?? 1;
  return (
    <Hear
      source={{
        title: desk.cell(at.week + 1, named.name, at.session + 1, sessions),
        groupName: named.name,
        plan,
        reminders: sheet.reminders,
        target: found.effort,
        fileName: `${sheet.id}-w${at.week + 1}-${at.group}-${at.session + 1}`,
      }}
      back={{ href: cellAt(key, at), name: desk.back }}
    />
  );
}
