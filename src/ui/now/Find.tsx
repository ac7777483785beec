import { useState } from 'react';
import { Link, useLocation, useParams } from 'wouter';
import { cautions } from '../../copy/cautions.ts';
import {
  comparedLine,
  groupAsks,
  groupReason,
  findGroupCopy as words,
} from '../../copy/find-group.ts';
import { groups as groupWords } from '../../copy/groups.ts';
import { type Answers, RUN_CHOICES, WALK_CHOICES } from '../../domain/advice/able.ts';
import { findGroup, type GroupAnswer } from '../../domain/advice/find-group.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, useProgrammes } from '../app-context.tsx';
import { Choices } from '../parts/Choices.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { Screen } from '../parts/Screen.tsx';

const WISHES = ['walk', 'mix', 'run', 'any'] as const;

/** A few plain questions that lead to a group, with the reason. Nothing of the answers is kept. */
export function Find() {
  const { id } = useParams<{ id: string }>();
  const programme = useProgrammes((p) => p.programmes.find((each) => each.id === id));
  return programme === undefined ? <NotHere /> : <Questions programme={programme} />;
}

function Questions({ programme }: { programme: Programme }) {
  const [answers, setAnswers] = useState<Partial<Answers>>({});
  const set = (part: Partial<Answers>) => setAnswers({ ...answers, ...part });
  const { walk, run, wish, gently } = answers;
  const found = isWhole(answers) ? findGroup(programme, answers) : undefined;
  return (
    <Screen
      title={words.title}
      sub={words.lead}
      back={{ href: `/p/${programme.id}/groups`, name: groupWords.title }}
    >
      <Choices
        legend={<Asked question={words.walk} help={words.walkHelp} />}
        options={optionsOf(WALK_CHOICES)}
        value={walk === undefined ? undefined : String(walk)}
        onChange={(value) => set({ walk: Number(value) })}
      />
      <Choices
        legend={<Asked question={words.run} help={words.runHelp} />}
        options={optionsOf(RUN_CHOICES)}
        value={run === undefined ? undefined : String(run)}
        onChange={(value) => set({ run: Number(value) })}
      />
      <Choices
        legend={words.wish}
        options={WISHES.map((value) => ({ value, name: words.wishes[value] }))}
        value={wish}
        onChange={(value) => set({ wish: value })}
      />
      <Choices
        legend={<Asked question={words.gently} help={words.gentlyHelp} />}
        options={[
          { value: 'yes', name: words.gentlyYes },
          { value: 'no', name: words.gentlyNo },
        ]}
        value={gently === undefined ? undefined : gently ? 'yes' : 'no'}
        onChange={(value) => set({ gently: value === 'yes' })}
      />
      <div role="status">
        {gently === true && (
          <div className="notice">
            <p>{words.gentlyCare}</p>
            <Link href="/cautions" className="text-button">
              {cautions.title}
            </Link>
          </div>
        )}
      </div>
      <p role="status" className={found === undefined ? 'soft' : 'for-readers'}>
        {found === undefined ? words.notYet : words.answer(nameOf(programme, found.group))}
      </p>
      {found !== undefined && <Answer programme={programme} found={found} />}
      <p className="soft">{words.free}</p>
    </Screen>
  );
}

const nameOf = ({ groups }: Programme, id: string): string =>
  groups.find((group) => group.id === id)?.name ?? id;

const optionsOf = (choices: readonly number[]) =>
  choices.map((n) => ({ value: String(n), name: words.choice(n, choices.at(-1) ?? n) }));

const isWhole = (answers: Partial<Answers>): answers is Answers =>
  answers.walk !== undefined &&
  answers.run !== undefined &&
  answers.wish !== undefined &&
  answers.gently !== undefined;

function Asked({ question, help }: { question: string; help: string }) {
  return (
    <>
      {question}
      <span className="small soft asked-help">{help}</span>
    </>
  );
}

function Answer({ programme, found }: { programme: Programme; found: GroupAnswer }) {
  const programmes = useApp().programmes;
  const [, go] = useLocation();
  const take = async (group: string) => {
    await programmes.getState().chooseGroup(programme.id, group);
    go(`/p/${programme.id}`);
  };
  return (
    <>
      <section className="card">
        <h2 className="big">{words.answer(nameOf(programme, found.group))}</h2>
        <p>{groupReason(found, programme.groups)}</p>
        <p>{groupAsks(found.why)}</p>
        <button
          type="button"
          className="button primary wide"
          onClick={() => void take(found.group)}
        >
          {words.take(nameOf(programme, found.group))}
        </button>
      </section>
      {found.others.length > 0 && (
        <section className="stack">
          <h2>{words.others}</h2>
          {found.others.map((other) => (
            <div key={other.group} className="stack tight">
              <h3>{nameOf(programme, other.group)}</h3>
              <p>
                {comparedLine(other)} {groupAsks(other)}
              </p>
              <div>
                <button type="button" className="button" onClick={() => void take(other.group)}>
                  {words.take(nameOf(programme, other.group))}
                </button>
              </div>
            </div>
          ))}
        </section>
      )}
    </>
  );
}
