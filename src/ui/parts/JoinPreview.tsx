import { useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { Acceptance, Preview } from '../../app/exchange-contract.ts';
import { cameLine } from '../../copy/came.ts';
import { choiceSaid, join, verdictSaid } from '../../copy/join.ts';
import { useApp } from '../app-context.tsx';

/** What came, what it is to what is here, and what may be done with it. */
export function JoinPreview({ preview }: { preview: Preview }) {
  const { programme, verdict, stored, digits, groupGone, signed } = preview;
  const { received: store, clock } = useApp();
  const heading = useRef<HTMLHeadingElement>(null);
  const said = verdictSaid(verdict, programme.revision, programme.leader.name);
  useEffect(() => heading.current?.focus(), []);
  return (
    <>
      <section className="notice">
        <h2 ref={heading} tabIndex={-1}>
          {said.title}
        </h2>
        <p>{said.body}</p>
        {digits !== undefined && (
          <p>
            {join.digits}: <strong className="big figures">{digits}</strong>
          </p>
        )}
        {groupGone !== undefined && <p>{join.groupGone(groupGone)}</p>}
      </section>
      <dl className="pairs">
        {factsOf(preview, clock.now()).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p>{signed ? join.signed : join.unsigned}</p>
      <Choose preview={preview} />
      <div className="row">
        {stored !== undefined && (
          <Link href={`/p/${stored.id}`} className="text-button">
            {join.toIt}
          </Link>
        )}
        <button type="button" className="text-button" onClick={() => store.getState().dismiss()}>
          {join.leave}
        </button>
      </div>
    </>
  );
}

function factsOf(
  { programme, stored }: Preview,
  now: number,
): readonly (readonly [string, string])[] {
  return [
    [join.leader, programme.leader.name],
    [join.weeks, String(programme.weeks.length)],
    [join.groups, programme.groups.map(({ name }) => name).join(', ')],
    [join.revision, String(programme.revision)],
    ...(programme.change === undefined ? [] : [[join.changed, programme.change] as const]),
    ...(stored === undefined ? [] : [[join.here, cameLine(stored, now)] as const]),
  ];
}

function Choose({ preview: { choices, verdict, programme } }: { preview: Preview }) {
  const store = useApp().received;
  const [failed, setFailed] = useState(false);
  const take = async (choice: Acceptance) => {
    const kept = await store.getState().accept(choice);
    setFailed(!kept.ok);
  };
  return (
    <>
      <div role="alert">{failed && <p className="notice">{join.notKept}</p>}</div>
      {choices.map((choice, n) => {
        const { name, help } = choiceSaid(choice, verdict.kind, programme.revision);
        const isUsual = n === 0 && choice === 'keep';
        return (
          <div key={choice} className="stack tight">
            <div>
              <button
                type="button"
                className={isUsual ? 'button primary' : 'button'}
                onClick={() => void take(choice)}
              >
                {name}
              </button>
            </div>
            <p className="small soft">{help}</p>
          </div>
        );
      })}
    </>
  );
}
