import { useId } from 'react';
import { useLocation } from 'wouter';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { effortWords } from '../../copy/effort.ts';
import { week as words } from '../../copy/workshop.ts';
import { LIMITS } from '../../domain/programme/shape.ts';
import { deskAt, weekAt } from './addresses.ts';
import { LineField, SelectField } from './fields.tsx';
import { useEdit } from './workshop-context.tsx';

const TIMES = [1, 2, 3, 4, 5, 6, 7];
const TENTHS = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100];

/** What a whole week has: focus, effort, times, what is done together, and its place. */
export function WeekPanel({ open, week: at }: { open: OpenSheet; week: number }) {
  const edit = useEdit();
  const id = useId();
  const week = open.sheet.weeks[at];
  if (week === undefined) return null;
  const { min, max } = week.timesPerWeek;
  const efforts = TENTHS.includes(week.effort)
    ? TENTHS
    : [...TENTHS, week.effort].sort((a, b) => a - b);
  return (
    <section className="stack" aria-labelledby={id}>
      <h2 id={id} tabIndex={-1}>
        {words.title(at + 1)}
      </h2>
      <LineField
        name={words.focus}
        help={words.focusHelp}
        value={week.focus}
        limit={LIMITS.sentence}
        sentence
        onChange={(focus) => edit({ kind: 'focus', week: at, focus })}
      />
      <SelectField
        name={words.effort}
        value={String(week.effort)}
        options={efforts.map((effort) => [
          String(effort),
          words.effortLine(effort / 10, effortWords(effort / 10)),
        ])}
        onChange={(effort) => edit({ kind: 'effort', week: at, effort: Number(effort) })}
      />
      <div className="pair">
        <SelectField
          name={words.timesMin}
          value={String(min)}
          options={TIMES.map((n) => [String(n), String(n)])}
          onChange={(n) =>
            edit({ kind: 'times', week: at, min: Number(n), max: Math.max(max, Number(n)) })
          }
        />
        <SelectField
          name={words.timesMax}
          value={String(max)}
          options={TIMES.map((n) => [String(n), String(n)])}
          onChange={(n) =>
            edit({ kind: 'times', week: at, min: Math.min(min, Number(n)), max: Number(n) })
          }
        />
      </div>
      <SelectField
        name={words.together}
        value={String(week.together ?? 0)}
        options={[0, ...TIMES.filter((n) => n <= max)].map((n) => [
          String(n),
          n === 0 ? words.none : words.session(n),
        ])}
        onChange={(n) => edit({ kind: 'together', week: at, session: Number(n) })}
      />
      <Moves open={open} at={at} />
    </section>
  );
}

function Moves({ open: { key, sheet }, at }: { open: OpenSheet; at: number }) {
  const edit = useEdit();
  const [, go] = useLocation();
  const last = sheet.weeks.length - 1;
  const move = (to: number) => {
    edit({ kind: 'move-week', from: at, to });
    go(weekAt(key, to), { replace: true });
  };
  return (
    <div className="row rule">
      {at > 0 && (
        <button type="button" className="button" onClick={() => move(at - 1)}>
          {words.earlier}
        </button>
      )}
      {at < last && (
        <button type="button" className="button" onClick={() => move(at + 1)}>
          {words.later}
        </button>
      )}
      <button
        type="button"
        className="button"
        disabled={sheet.weeks.length >= LIMITS.weeks}
        onClick={() => {
          edit({ kind: 'add-week', at: at + 1 });
          go(weekAt(key, at + 1));
        }}
      >
        {words.add}
      </button>
      <button
        type="button"
        className="button"
        disabled={last === 0}
        onClick={() => {
          go(deskAt(key), { replace: true });
          edit({ kind: 'remove-week', week: at });
        }}
      >
        {words.remove}
      </button>
    </div>
  );
}
