import { leadDay as words } from '../../copy/lead-day.ts';
import { minutes } from '../../copy/times.ts';
import { stripInWords } from '../../copy/words.ts';
import {
  LATEST_MINUTE,
  type LeadChoiceGroup,
  planIn,
  staggered,
} from '../../domain/lead/choose.ts';
import { VOICES, type Voice } from '../../domain/lead/lead-plan.ts';
import type { SessionPlan } from '../../domain/programme/programme.ts';
import { timelineOf } from '../parts/plans.ts';
import { Strip } from '../parts/Strip.tsx';
import { Tick } from '../tell/Tick.tsx';
import { SelectField } from '../workshop/fields.tsx';
import type { ChoiceProps } from './ChooseSession.tsx';

const STAGGER_MINUTES = 2;
const STARTS = Array.from({ length: LATEST_MINUTE + 1 }, (_, minute) => minute);

/** Who is here, when each group starts, and how it is told. */
export function ChooseGroups({ outline, choice, onChange }: ChoiceProps) {
  const { groups } = choice;
  const change = (id: string, part: Partial<LeadChoiceGroup>) =>
    onChange({
      ...choice,
      groups: groups.map((each) => (each.id === id ? { ...each, ...part } : each)),
    });
  const isAnyHere = outline.groups.some(
    ({ id }) => groups.find((each) => each.id === id)?.here && planIn(outline, choice, id),
  );
  return (
    <section className="stack">
      <h2>{words.who}</h2>
      <p className="small soft">{words.whoHelp}</p>
      <div className="row">
        <button
          type="button"
          className="button"
          onClick={() => onChange(staggered(choice, STAGGER_MINUTES))}
        >
          {words.stagger}
        </button>
        <button type="button" className="button" onClick={() => onChange(staggered(choice, 0))}>
          {words.atOnce}
        </button>
      </div>
      {outline.groups.map(({ id, name }, index) => {
        const group = groups.find((each) => each.id === id);
        const plan = planIn(outline, choice, id);
        return (
          group !== undefined && (
            <OneGroup
              key={id}
              title={words.here(index + 1, name)}
              name={name}
              group={group}
              plan={plan}
              onChange={(part) => change(id, part)}
            />
          )
        );
      })}
      {!isAnyHere && <p role="status">{words.nobody}</p>}
    </section>
  );
}

interface OneGroupProps {
  readonly title: string;
  readonly name: string;
  readonly group: LeadChoiceGroup;
  readonly plan: SessionPlan | undefined;
  readonly onChange: (part: Partial<LeadChoiceGroup>) => void;
}

const STRIP_PX = 40;

function OneGroup({ title, name, group, plan, onChange }: OneGroupProps) {
  if (plan === undefined) {
    return (
      <p className="lead-choice soft">
        {title}: {words.noPlan}
      </p>
    );
  }
  const timeline = timelineOf(plan.plan);
  return (
    <div className="lead-choice">
      <Tick
        checked={group.here}
        name={title}
        help={minutes(timeline.total)}
        onChange={(here) => onChange({ here })}
      />
      {group.here && (
        <>
          <Strip timeline={timeline} height={STRIP_PX} label={stripInWords(plan.plan)} />
          <div className="pair">
            <SelectField
              name={words.starts(name)}
              value={String(group.minutesLater)}
              options={STARTS.map((minute) => [String(minute), words.start(minute)])}
              onChange={(value) => onChange({ minutesLater: Number(value) })}
            />
            <SelectField
              name={words.voice(name)}
              value={group.voice}
              options={VOICES.map((voice) => [voice, words.voices[voice]])}
              onChange={(voice) => onChange({ voice: voice as Voice })}
            />
          </div>
        </>
      )}
    </div>
  );
}
