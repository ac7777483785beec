import { nowCopy as words } from '../../copy/now.ts';
import { minutes } from '../../copy/times.ts';
import { weeks } from '../../copy/weeks.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useNow, useSituation } from './use-now.ts';

interface LineProps {
  readonly programme: Programme;
  readonly group: string;
}

/** What is next in a programme, in a line: enough to choose between several. */
export function NextLine({ programme, group }: LineProps) {
  const { next, care, stage } = useNow(useSituation(programme, group));
  if (next === undefined) return stage === 'through' ? <p>{words.through}</p> : null;
  const what = `${weeks.session(next.week, next.session)}, ${minutes(next.length)}`;
  const how = care === undefined ? words.need[next.need] : words.waits;
  return (
    <p className="figures">
      {how}: {what}. {next.need === 'later' && care === undefined && words.from(next.from)}
    </p>
  );
}
