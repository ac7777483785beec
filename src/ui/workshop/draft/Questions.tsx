import { type FormEvent, useEffect, useRef, useState } from 'react';
import { wishSentence } from '../../../copy/draft-answers.ts';
import { draftForm as words } from '../../../copy/draft-form.ts';
import { checkWish, type Wish, type WishField } from '../../../domain/draft/wish.ts';
import type { Sheet } from '../../../domain/workshop/sheet.ts';
import { Screen } from '../../parts/Screen.tsx';
import { type Answers, wishOf } from './answers.ts';
import { GroupsFields } from './GroupsFields.tsx';
import { TimeFields } from './TimeFields.tsx';

interface QuestionsProps {
  readonly sheet: Sheet;
  readonly answers: Answers;
  readonly onAnswers: (answers: Answers) => void;
  readonly onDraft: (wish: Wish) => void;
  /** The address of the programme. */
  readonly home: string;
  /** Why the last try gave no draft. */
  readonly failed: string | undefined;
  readonly working: boolean;
}

/** What is asked before a draft. Mistakes are told at their fields once it was asked for. */
export function Questions(props: QuestionsProps) {
  const { sheet, answers, onAnswers, onDraft, home, failed, working } = props;
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
      back={{ href: home, name: words.back }}
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
