import { type FormEvent, useEffect, useRef, useState } from 'react';
import { wishSentence } from '../../../copy/draft.ts';
import { draftForm as words } from '../../../copy/draft-form.ts';
import {
  checkWish,
  WISH,
  type Wish,
  type WishField,
  weeksUntil,
} from '../../../domain/draft/wish.ts';
import type { Sheet } from '../../../domain/workshop/sheet.ts';
import { Screen } from '../../parts/Screen.tsx';
import { type Answers, type GroupAnswers, wishOf, withGroup } from './answers.ts';
import { Field } from './Field.tsx';
import { GroupFields } from './GroupFields.tsx';

interface QuestionsProps {
  readonly sheet: Sheet;
  readonly answers: Answers;
  readonly onAnswers: (answers: Answers) => void;
  readonly onDraft: (wish: Wish) => void;
  readonly onBack: () => void;
  /** Where the page is, for its way back. */
  readonly here: string;
  /** Why the last try gave no draft. */
  readonly failed: string | undefined;
  readonly working: boolean;
}

/** What is asked before a draft. Mistakes are told at their fields once it was asked for. */
export function Questions(props: QuestionsProps) {
  const { sheet, answers, onAnswers, onDraft, onBack, here, failed, working } = props;
  const [asked, setAsked] = useState(0);
  const form = useRef<HTMLFormElement>(null);
  const wish = wishOf(answers, sheet);
  const problems = asked > 0 ? checkWish(wish) : [];
  useEffect(() => {
    if (asked > 0) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [asked]);
  const problem = (field: WishField, group?: string): string | undefined => {
    const found = problems.find((one) => one.field === field && one.group === group);
    return found && wishSentence(found);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (checkWish(wish).length > 0) setAsked(asked + 1);
    else onDraft(wish);
  };
  const pins = wish.pins?.length ?? 0;
  return (
    <Screen
      title={words.title}
      sub={words.sub}
      back={{ href: here, name: words.back, onGo: onBack }}
      foot={
        <button type="submit" form="draft-questions" className="button primary" disabled={working}>
          {words.draft}
        </button>
      }
    >
      <form id="draft-questions" ref={form} className="draft-form" noValidate onSubmit={submit}>
        <div role="alert">
          {problems.length > 0 && <p className="notice">{words.wrong(problems.length)}</p>}
          {failed !== undefined && problems.length === 0 && <p className="notice">{failed}</p>}
        </div>
        {pins > 0 && <p>{words.pinned(pins)}</p>}
        <TimeFields answers={answers} onAnswers={onAnswers} problem={problem} />
        <GroupsFields answers={answers} onAnswers={onAnswers} problem={problem} />
      </form>
      <p role="status">{working && words.working}</p>
      <Limits />
    </Screen>
  );
}

interface PartProps {
  readonly answers: Answers;
  readonly onAnswers: (answers: Answers) => void;
  readonly problem: (field: WishField, group?: string) => string | undefined;
}

function TimeFields({ answers, onAnswers, problem }: PartProps) {
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

function GroupsFields({ answers, onAnswers, problem }: PartProps) {
  const [said, setSaid] = useState('');
  const list = useRef<HTMLDivElement>(null);
  const { groups } = answers;
  const put = (next: readonly GroupAnswers[]) => onAnswers({ ...answers, groups: next });
  const add = () => {
    const name = words.group(groups.length + 1);
    onAnswers(withGroup(answers, name));
    setSaid(words.added(name));
  };
  const remove = (n: number, name: string) => {
    put(groups.toSpliced(n, 1));
    setSaid(words.removed(name));
    // The button that was pressed is gone: the group that took its place is next.
    const fields = list.current?.querySelectorAll<HTMLElement>('fieldset.draft-group');
    fields?.[n === 0 ? 1 : n - 1]?.querySelector<HTMLElement>('input')?.focus();
  };
  return (
    <section className="stack rule">
      <h2>{words.groupsTitle}</h2>
      <p>{words.groupsHelp}</p>
      {problem('groups') !== undefined && <p className="draft-wrong">{problem('groups')}</p>}
      <div className="draft-groups" ref={list}>
        {groups.map((group, n) => (
          <GroupFields
            key={group.id}
            n={n + 1}
            group={group}
            problem={problem}
            onChange={(change) => put(groups.with(n, { ...group, ...change }))}
            onRemove={
              groups.length > WISH.groups.min
                ? () => remove(n, group.name.trim() || words.group(n + 1))
                : undefined
            }
          />
        ))}
      </div>
      <p role="status" className="for-readers">
        {said}
      </p>
      {groups.length < WISH.groups.max && (
        <div>
          <button type="button" className="button" onClick={add}>
            {words.add}
          </button>
        </div>
      )}
    </section>
  );
}

function Limits() {
  return (
    <details>
      <summary>{words.limitsTitle}</summary>
      <ul className="bullets">
        {words.limits.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
