import { useState } from 'react';
import { calledOf } from '../../copy/board.ts';
import { personPage } from '../../copy/board-page.ts';
import { keep as words } from '../../copy/keep.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { KeptFocus } from '../parts/KeptFocus.tsx';
import { LineField } from '../workshop/fields.tsx';
import { useBoardStore } from './board-context.tsx';
import { ForgetQuestion } from './ForgetQuestion.tsx';
import { KeepSaid } from './KeepSaid.tsx';
import { useJob } from './keep-job.ts';
import { type Listed, listedBy, matching } from './list-people.ts';

/** As many as are shown without a name to look for. */
const SHOWN = 8;

/** Everybody on the board, and the one action that forgets somebody wholly. */
export function KeepForget({ input }: { input: BoardInput }) {
  const store = useBoardStore();
  const job = useJob();
  const [search, setSearch] = useState('');
  const [asked, setAsked] = useState<Listed>();
  const groups = matching(listedBy(input), search);
  const found = groups.flatMap(({ people, name }) => people.map((who) => ({ who, group: name })));
  const forget = async (who: Listed) => {
    setAsked(undefined);
    await job.run(
      store.getState().forget(input.programme.id, who.person),
      words.forgotten(calledOf(who)),
    );
  };
  return (
    <section className="stack rule">
      <h2>{words.forget}</h2>
      <p>{words.forgetBody}</p>
      <KeepSaid said={job.said} />
      {input.heard.length === 0 ? (
        <p className="soft">{words.nobody}</p>
      ) : (
        <KeptFocus>
          <LineField name={words.search} value={search} onChange={setSearch} />
          <ul className="keep-people">
            {found.slice(0, SHOWN).map(({ who, group }) => (
              <li key={who.person}>
                <span>
                  <strong>{calledOf(who)}</strong> <small className="soft">{group}</small>
                </span>
                <button type="button" className="button" onClick={() => setAsked(who)}>
                  {personPage.forgetGo(calledOf(who))}
                </button>
              </li>
            ))}
          </ul>
          <p role="status" className="small soft">
            {found.length === 0 && words.noneFound}
            {found.length > SHOWN && words.more(found.length - SHOWN)}
          </p>
        </KeptFocus>
      )}
      {asked !== undefined && (
        <ForgetQuestion
          who={asked}
          input={input}
          onYes={() => void forget(asked)}
          onNo={() => setAsked(undefined)}
        />
      )}
    </section>
  );
}
