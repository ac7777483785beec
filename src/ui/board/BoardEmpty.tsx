import { boardPage as words } from '../../copy/board-page.ts';
import { tell } from '../../copy/tell.ts';
import type { Programme } from '../../domain/programme/programme.ts';

/** Before anything came back: how people answer. */
export function BoardEmpty({ programme }: { programme: Programme }) {
  const { title, how, steps, sealed, unsealed } = words.empty;
  return (
    <section className="stack rule">
      <h2>{title}</h2>
      <p>{how}</p>
      <ol className="steps">
        {steps(tell.title).map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>{programme.leader.seal === null ? unsealed : sealed}</p>
    </section>
  );
}
