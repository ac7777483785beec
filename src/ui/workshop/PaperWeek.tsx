import { type CSSProperties, useLayoutEffect, useRef, useState } from 'react';
import { effortOfTen } from '../../copy/effort.ts';
import { paper } from '../../copy/paper.ts';
import { day, sentence } from '../../copy/times.ts';
import { weeks as words } from '../../copy/weeks.ts';
import { datesOfWeek } from '../../domain/programme/calendar.ts';
import type { Week } from '../../domain/programme/programme.ts';
import { ms } from '../../domain/units.ts';
import { timelineOf } from '../parts/plans.ts';
import type { Printed } from './Paper.tsx';
import { PaperFoot } from './PaperFoot.tsx';
import { densityOf, PaperGroup } from './PaperGroup.tsx';
import { useFit } from './use-fit.ts';

/** CSS pixels are 1/96 inch. */
const PX_PER_MM = 96 / 25.4;
/** A4 (ISO 216: 210 x 297 mm), as paper.css has it. */
const SHEET_PX = 210 * PX_PER_MM;
/** Within margins of 12 mm, and a little less: a page printed is not to the pixel the page shown. */
const MOST_PX = (297 - 2 * 12 - 2) * PX_PER_MM;

/** One week on one page; on the screen the page made as small as the screen. */
export function PaperWeek({ number, ...printed }: Printed & { number: number }) {
  const { ref: frame, scale } = useScale();
  const { ref, size } = useFit(MOST_PX);
  const { outline, title, sending } = printed;
  const week = outline.weeks[number - 1];
  if (week === undefined) return null;
  const sessions = outline.groups.flatMap(({ id }) => week.sessions[id] ?? []);
  const longest = ms(Math.max(1, ...sessions.map(({ plan }) => timelineOf(plan).total)));
  const style = { '--print': size, '--shown': scale } as CSSProperties;
  return (
    <div className="paper-frame" ref={frame} style={style}>
      <section className="paper-page" aria-label={words.week(number)}>
        <div ref={ref} className="paper-body">
          <Head printed={printed} week={week} number={number} />
          <ul className="paper-groups">
            {outline.groups.map((group) => (
              <PaperGroup
                key={group.id}
                group={group}
                sessions={week.sessions[group.id] ?? []}
                longest={longest}
                density={densityOf(sessions.length)}
                size={size}
              />
            ))}
          </ul>
          <PaperFoot week={week} title={title} sending={sending} />
        </div>
      </section>
    </div>
  );
}

interface HeadProps {
  readonly printed: Printed;
  readonly week: Week;
  readonly number: number;
}

function Head({ printed: { outline, title, leader }, week, number }: HeadProps) {
  const dates = datesOfWeek(outline.startDate, number);
  const { goal } = outline;
  const km = `${goal.distanceM / 1000} km`;
  const now =
    goal.date !== undefined &&
    dates !== undefined &&
    goal.date >= dates.monday &&
    goal.date <= dates.sunday;
  const when = goal.date === undefined ? '' : day(goal.date);
  return (
    <header className="paper-head">
      <p className="paper-line">
        <span>{paper.from(title, leader)}</span>
        {goal.name !== '' && (
          <span>{now ? paper.goalNow(goal.name, km, when) : words.goal(goal.name, km, when)}</span>
        )}
      </p>
      <h2 className="paper-line">
        <span>{paper.week(number, outline.weeks.length)}</span>
        {dates !== undefined && (
          <span className="paper-dates">{paper.dates(day(dates.monday), day(dates.sunday))}</span>
        )}
      </h2>
      {week.focus !== '' && <p className="paper-focus">{sentence(week.focus)}</p>}
      <p>
        <strong>{paper.effort(effortOfTen(Math.round(week.effort / 10)))}</strong>{' '}
        {words.perWeek(week.timesPerWeek.min, week.timesPerWeek.max)}.{' '}
        {week.together !== undefined && words.together(week.together)}
      </p>
    </header>
  );
}

/** How much smaller than paper the screen is. */
function useScale() {
  const ref = useRef<HTMLDivElement>(null);
  const [scale, setScale] = useState(1);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => setScale(Math.min(1, (element.clientWidth || SHEET_PX) / SHEET_PX));
    measure();
    if (typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, scale };
}
