import { useState } from 'react';
import { clubMessage, groupMessage } from '../../copy/board-message.ts';
import { nextPage as words } from '../../copy/next-page.ts';
import type { Board } from '../../domain/board/board.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';
import { SelectField } from '../workshop/fields.tsx';
import { WordDraft } from './WordDraft.tsx';
import { useShare } from './words-share.ts';

interface MessageProps {
  readonly programme: Programme;
  readonly board: Board;
  /** From 1. */
  readonly looked: number;
  /** The week to come is told as it is written here. */
  readonly sheet: Sheet;
}

/** Last week in three sentences and the week to come, to everybody or to one group. */
export function NextMessage({ programme, board, looked, sheet }: MessageProps) {
  const [to, setTo] = useState('');
  const share = useShare();
  const week = sheet.weeks[looked];
  const about = {
    title: programme.title,
    leader: programme.leader.name,
    board,
    looked,
    ...(week === undefined ? {} : { next: { number: looked + 1, week } }),
  };
  return (
    <section className="stack rule">
      <h2>{words.message}</h2>
      <p className="soft">{words.messageHelp}</p>
      <SelectField
        name={words.to}
        value={to}
        options={[['', words.all], ...programme.groups.map(({ id, name }) => [id, name] as const)]}
        onChange={setTo}
      />
      <WordDraft
        key={`${to} ${looked}`}
        name={words.draft}
        draft={to === '' ? clubMessage(about) : groupMessage(about, to)}
        share={share}
        rows={14}
      />
    </section>
  );
}
