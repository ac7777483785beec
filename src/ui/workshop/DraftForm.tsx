import '../styles/workshop-draft.css';
import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import { draftWords } from '../../copy/draft.ts';
import { draftForm as words } from '../../copy/draft-form.ts';
import { type Draft, draftProgramme } from '../../domain/draft/draft.ts';
import { draftSheet, pinsOf } from '../../domain/draft/sheet.ts';
import type { Wish } from '../../domain/draft/wish.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';
import { seenOf } from './addresses.ts';
import { answersOf } from './draft/answers.ts';
import { Proposal } from './draft/Proposal.tsx';
import { Questions } from './draft/Questions.tsx';

interface DraftFormProps {
  readonly sheet: Sheet;
  /** The draft as a whole sheet: pinned cells, title, leader and reminders are those of `sheet`. */
  readonly onTake: (sheet: Sheet) => void;
  /** The address of the questions; the draft has one below it, so that the way back keeps answers. */
  readonly here: string;
  /** The address of the programme. */
  readonly home: string;
}

type Stage =
  | { readonly name: 'asking'; readonly failed?: string }
  | { readonly name: 'working'; readonly wish: Wish }
  | { readonly name: 'there'; readonly wish: Wish; readonly draft: Draft };

/** Drafts a programme from a few answers; the sheet changes only when the draft is taken over. */
export function DraftForm({ sheet, onTake, here, home }: DraftFormProps) {
  const [address, go] = useLocation();
  const seen = seenOf(here);
  const [answers, setAnswers] = useState(() => answersOf(sheet));
  const [stage, setStage] = useState<Stage>({ name: 'asking' });
  useEffect(() => {
    if (stage.name !== 'working') return;
    const { wish } = stage;
    // The page says that it works before it does: a large draft takes a slow phone a moment.
    const start = setTimeout(() => {
      const draft = draftProgramme(wish);
      if (draft.ok) {
        setStage({ name: 'there', wish, draft: draft.value });
        go(seen);
      } else setStage({ name: 'asking', failed: words.noWay });
    }, 30);
    return () => clearTimeout(start);
  }, [stage, go, seen]);
  // A draft is not kept: its address, opened anew, leads to the questions.
  const isLost = address === seen && stage.name === 'asking';
  useEffect(() => {
    if (isLost) go(here, { replace: true });
  }, [isLost, go, here]);
  if (stage.name === 'there' && address === seen)
    return (
      <Proposal
        key="there"
        {...stage}
        here={here}
        lost={pinsOf(sheet).length - (stage.wish.pins?.length ?? 0)}
        onTake={() => onTake(draftSheet(stage.draft, stage.wish, draftWords, sheet))}
        onChange={() => go(here)}
      />
    );
  return (
    <Questions
      key="asking"
      sheet={sheet}
      answers={answers}
      onAnswers={setAnswers}
      onDraft={(wish) => setStage({ name: 'working', wish })}
      home={home}
      failed={stage.name === 'asking' ? stage.failed : undefined}
      working={stage.name === 'working'}
    />
  );
}
