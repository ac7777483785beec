import { useState } from 'react';
import { Link } from 'wouter';
import { calledOf } from '../../copy/board.ts';
import { DUE_TITLE, dueWords, reasonSentence, wordDraft } from '../../copy/board-due.ts';
import { wordsPage as words } from '../../copy/words-page.ts';
import type { BoardInput, PersonRow } from '../../domain/board/board.ts';
import type { Due } from '../../domain/board/due.ts';
import { SelectField } from '../workshop/fields.tsx';
import { personAt } from './addresses.ts';
import { WordDraft } from './WordDraft.tsx';
import type { useShare } from './words-share.ts';

interface ItemProps {
  readonly due: Due;
  readonly row: PersonRow;
  readonly input: BoardInput;
  readonly share: ReturnType<typeof useShare>;
}

/** One person, why they need a word, and the word. */
export function WordItem({ due, row, input, share }: ItemProps) {
  const { programme } = input;
  const name = calledOf(row);
  const group = programme.groups.find(({ id }) => id === row.group)?.name ?? row.group;
  return (
    <article className="stack tight">
      <h3 className="big">
        {name} <small className="soft">{group}</small>
      </h3>
      <ul className="stack tight" aria-label={words.tagsOf(name)}>
        {due.reasons.map((reason) => (
          <li key={`${reason.code} ${JSON.stringify(reason.detail)}`}>
            <span className={reason.code === 'sign' ? 'tag' : 'tag plain'}>
              {DUE_TITLE[reason.code]}
            </span>{' '}
            {reasonSentence(reason, programme.groups)}
          </li>
        ))}
      </ul>
      <WordMessage due={due} row={row} input={input} share={share} />
      <div>
        <Link href={personAt(programme.id, row.person)} className="text-button">
          {words.toPerson(name)}
        </Link>
      </div>
    </article>
  );
}

/** The word itself, behind its name until it is asked for. */
export function WordMessage(props: ItemProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.draft(calledOf(props.row))}</summary>
      {isOpen && <Message {...props} />}
    </details>
  );
}

/** About the gravest reason, or about another of theirs. */
function Message({ due, row, input: { programme }, share }: ItemProps) {
  const [about, setAbout] = useState(0);
  const reason = due.reasons[about] ?? due.reasons[0];
  const name = calledOf(row);
  const to = {
    ...(row.name === undefined ? {} : { name: row.name }),
    leader: programme.leader.name,
    groups: programme.groups,
  };
  return (
    <div className="stack tight">
      {due.reasons.length > 1 && (
        <SelectField
          name={words.about}
          value={String(about)}
          options={due.reasons.map(({ code }, n) => [String(n), DUE_TITLE[code]])}
          onChange={(n) => setAbout(Number(n))}
        />
      )}
      <p className="small">{dueWords.alone(name)}</p>
      <WordDraft
        key={about}
        name={words.draft(name)}
        draft={wordDraft(reason, to)}
        share={share}
        rows={10}
      />
    </div>
  );
}
