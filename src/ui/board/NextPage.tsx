import '../styles/board-words.css';
import { useState } from 'react';
import { Link, useParams } from 'wouter';
import { nextWords } from '../../copy/board-next.ts';
import { nextPage as words } from '../../copy/next-page.ts';
import { desk } from '../../copy/workshop.ts';
import type { Board, BoardInput } from '../../domain/board/board.ts';
import { suggestionsFor, weekToLookAt } from '../../domain/board/suggest.ts';
import { Screen } from '../parts/Screen.tsx';
import { pageAt } from '../workshop/addresses.ts';
import { SelectField } from '../workshop/fields.tsx';
import { WorkshopProvider } from '../workshop/workshop-context.tsx';
import { boardAt } from './addresses.ts';
import { useBoard } from './board-context.tsx';
import { NextGroup } from './NextGroup.tsx';
import { NextMessage } from './NextMessage.tsx';
import { useNextSheet } from './next-sheet.ts';
import { standingOf } from './next-standing.ts';

/** What the answers suggest for the week to come, taken into the programme with one tap. */
export function NextPage() {
  const { id = '' } = useParams();
  const made = useBoard(id);
  if (made === undefined) return null;
  return (
    <WorkshopProvider>
      <Next input={made.input} board={made.board} />
    </WorkshopProvider>
  );
}

function Next({ input, board }: { input: BoardInput; board: Board }) {
  const { programme } = input;
  const [chosen, setChosen] = useState<number>();
  const looked = chosen ?? weekToLookAt(input);
  const writing = useNextSheet(programme);
  const suggestions = looked === undefined ? [] : suggestionsFor(input, looked);
  const groups = suggestions.map((suggestion) => ({
    suggestion,
    standing: standingOf(writing.sheet, programme, suggestion, suggestion.way),
  }));
  const isChanged = groups.some(
    ({ standing }) => standing !== undefined && standing.is !== 'go-on',
  );
  return (
    <Screen
      title={words.title}
      sub={programme.title}
      back={{ href: boardAt(programme.id), name: words.back }}
      foot={
        isChanged &&
        writing.key !== undefined && (
          <Link href={pageAt(writing.key, 'send')} className="button primary wide">
            {words.send}
          </Link>
        )
      }
    >
      <WeekField input={input} looked={looked} onChoose={setChosen} />
      <p>{suggestions.length === 0 ? nextWords.nothing : nextWords.lead}</p>
      <div role="alert">{writing.isUnsaved && <p className="notice">{desk.notKept}</p>}</div>
      {groups.map(({ suggestion, standing }) => (
        <NextGroup
          key={`${suggestion.group} ${suggestion.looked}`}
          programme={programme}
          suggestion={suggestion}
          standing={standing}
          writing={writing}
        />
      ))}
      {looked !== undefined && (
        <NextMessage programme={programme} board={board} looked={looked} sheet={writing.sheet} />
      )}
    </Screen>
  );
}

interface WeekProps {
  readonly input: BoardInput;
  readonly looked: number | undefined;
  readonly onChoose: (week: number) => void;
}

function WeekField({ input: { programme }, looked, onChoose }: WeekProps) {
  const count = programme.weeks.length;
  const weeks = Array.from({ length: count }, (_, n): readonly [string, string] => [
    String(n + 1),
    words.lookedOption(n + 1, n + 1 < count ? n + 2 : undefined),
  ]);
  return (
    <SelectField
      name={words.looked}
      value={String(looked ?? '')}
      options={looked === undefined ? [['', words.choose], ...weeks] : weeks}
      onChange={(week) => {
        if (week !== '') onChoose(Number(week));
      }}
    />
  );
}
