import { changeSentence, draftWords, HARD } from '../../../copy/draft.ts';
import { answerSentences } from '../../../copy/draft-answers.ts';
import { draftForm, draftResult as words } from '../../../copy/draft-form.ts';
import { length } from '../../../copy/times.ts';
import { stripInWords } from '../../../copy/words.ts';
import {
  type Draft,
  type DraftCell,
  type DraftWeek,
  hardActivity,
} from '../../../domain/draft/draft.ts';
import type { Wish, WishGroup } from '../../../domain/draft/wish.ts';
import { lengthOf } from '../../../domain/programme/totals.ts';
import { type Ms, ms } from '../../../domain/units.ts';
import { timelineOf } from '../../parts/plans.ts';
import { Screen } from '../../parts/Screen.tsx';
import { Strip } from '../../parts/Strip.tsx';

interface ProposalProps {
  readonly wish: Wish;
  readonly draft: Draft;
  /** Pinned sessions that have no place in it. */
  readonly lost: number;
  readonly onTake: () => void;
  readonly onChange: () => void;
  readonly here: string;
}

/** The draft, week by week, each step in a sentence; nothing is changed by looking at it. */
export function Proposal({ wish, draft, lost, onTake, onChange, here }: ProposalProps) {
  const longest = ms(
    Math.max(
      ...draft.weeks.flatMap(({ cells }) =>
        Object.values(cells).map(({ plan }) => timelineOf(plan).total),
      ),
    ),
  );
  return (
    <Screen
      title={words.title}
      sub={words.sub}
      back={{ href: here, name: words.change }}
      foot={
        <div className="row">
          <button type="button" className="button primary" onClick={onTake}>
            {words.take}
          </button>
          <button type="button" className="button" onClick={onChange}>
            {words.change}
          </button>
        </div>
      }
    >
      <p>{words.caution}</p>
      {lost > 0 && <p className="notice">{draftForm.pinnedLost(lost)}</p>}
      <section className="stack rule">
        <h2>{words.answers}</h2>
        {draft.answers.map((answer) => {
          const name = wish.groups.find(({ id }) => id === answer.group)?.name.trim() ?? '';
          const [first, ...others] = answerSentences(answer, name);
          return (
            <p key={answer.group} className={answer.arrives ? '' : 'draft-short'}>
              <strong>{first}</strong> {others.join(' ')}
            </p>
          );
        })}
      </section>
      <section className="stack">
        <h2>{words.weeks}</h2>
        <ol className="draft-weeks">
          {draft.weeks.map((week, n) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a week is its place in the row
            <li key={n} className="stack">
              <Week n={n} week={week} wish={wish} longest={longest} />
            </li>
          ))}
        </ol>
      </section>
      <p className="small soft">{words.replaces}</p>
    </Screen>
  );
}

interface WeekProps {
  readonly n: number;
  readonly week: DraftWeek;
  readonly wish: Wish;
  readonly longest: Ms;
}

function Week({ n, week, wish, longest }: WeekProps) {
  const { min, max } = week.timesPerWeek;
  return (
    <>
      <div className="stack tight">
        <h3>{words.week(n + 1, draftWords.focus[week.focus])}</h3>
        <p className="small soft">{words.weekLine(Math.round(week.effort / 10), min, max)}</p>
      </div>
      <div className="draft-cells">
        {wish.groups.map((group) => {
          const cell = week.cells[group.id];
          return cell && <Cell key={group.id} group={group} cell={cell} longest={longest} />;
        })}
      </div>
    </>
  );
}

function Cell({ group, cell, longest }: { group: WishGroup; cell: DraftCell; longest: Ms }) {
  const timeline = timelineOf(cell.plan);
  return (
    <div className="stack tight">
      <div className="row spread">
        <h4>{group.name.trim()}</h4>
        {cell.change.code === 'pinned' && <span className="tag">{words.pinned}</span>}
      </div>
      <Strip timeline={timeline} height={44} of={longest} label={stripInWords(cell.plan)} />
      <p className="small figures">
        {words.totals(length(timeline.total), length(lengthOf(cell.plan.main)))}
      </p>
      <p className="small">{cell.text}</p>
      <p className="draft-step">{changeSentence(cell.change, HARD[hardActivity(group)])}</p>
      {cell.apart === true && <p className="small draft-short">{words.apart}</p>}
    </div>
  );
}
