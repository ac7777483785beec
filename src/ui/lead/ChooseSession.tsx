import { leadDay as words } from '../../copy/lead-day.ts';
import { type LeadChoice, sessionCount, togetherIn } from '../../domain/lead/choose.ts';
import type { Outline } from '../../domain/review/outline.ts';
import { SelectField } from '../workshop/fields.tsx';

/** What every part of the choice is given. */
export interface ChoiceProps {
  readonly outline: Outline;
  readonly choice: LeadChoice;
  readonly onChange: (choice: LeadChoice) => void;
}

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i + 1);

/** Which week, and which of its sessions. */
export function ChooseSession({ outline, choice, onChange }: ChoiceProps) {
  const { week, session } = choice;
  const count = sessionCount(outline, week);
  const together = outline.weeks[week - 1]?.together;
  return (
    <section className="stack">
      <h2>{words.which}</h2>
      <div className="stack">
        <SelectField
          name={words.week}
          value={String(week)}
          options={outline.weeks.map(({ focus }, i) => [
            String(i + 1),
            words.weekName(i + 1, focus),
          ])}
          onChange={(value) =>
            onChange({
              ...choice,
              week: Number(value),
              session: togetherIn(outline, Number(value)),
            })
          }
        />
        <SelectField
          name={words.session}
          value={String(session)}
          options={upTo(count).map((n) => [String(n), words.sessionName(n, n === together)])}
          onChange={(value) => onChange({ ...choice, session: Number(value) })}
        />
      </div>
    </section>
  );
}
