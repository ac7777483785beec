import { draftForm as words } from '../../../copy/draft-form.ts';
import { WISH, type WishField, weeksUntil } from '../../../domain/draft/wish.ts';
import type { Answers } from './answers.ts';
import { Field } from './Field.tsx';

/** What each part of the form is given. `problem`: why an answer does not fit, in a sentence. */
export interface PartProps {
  readonly answers: Answers;
  readonly onAnswers: (answers: Answers) => void;
  readonly problem: (field: WishField, group?: string) => string | undefined;
}

/** Dates, weeks, distance and the time that a session may take. */
export function TimeFields({ answers, onAnswers, problem }: PartProps) {
  const change = (part: Partial<Answers>) => onAnswers({ ...answers, ...part });
  const fit = weeksUntil(answers.startDate, answers.eventDate);
  const isOther =
    fit !== undefined &&
    fit >= WISH.weeks.min &&
    fit <= WISH.weeks.max &&
    String(fit) !== answers.weeks.trim();
  return (
    <section className="stack rule">
      <h2>{words.timeTitle}</h2>
      <div className="draft-pair">
        <Field
          kind="date"
          name={words.start}
          help={words.optional}
          value={answers.startDate}
          problem={problem('start')}
          onChange={(startDate) => change({ startDate })}
        />
        <Field
          kind="date"
          name={words.event}
          help={words.optional}
          value={answers.eventDate}
          problem={problem('event')}
          onChange={(eventDate) => change({ eventDate })}
        />
        <Field
          kind="number"
          name={words.weeks}
          help={words.weeksHelp}
          value={answers.weeks}
          problem={problem('weeks')}
          onChange={(weeks) => change({ weeks })}
        />
        <Field
          kind="number"
          name={words.distance}
          value={answers.distanceKm}
          problem={problem('distance')}
          onChange={(distanceKm) => change({ distanceKm })}
        />
        <Field
          kind="number"
          name={words.session}
          help={words.sessionHelp}
          value={answers.session}
          problem={problem('session')}
          onChange={(session) => change({ session })}
        />
      </div>
      {isOther && (
        <div className="row">
          <p>{words.weeksFit(fit)}</p>
          <button type="button" className="button" onClick={() => change({ weeks: String(fit) })}>
            {words.weeksTake(fit)}
          </button>
        </div>
      )}
    </section>
  );
}
