import type { PocketRecord } from '../../app/contract.ts';
import { pocket } from '../../copy/pocket.ts';
import { inWords } from '../../copy/times.ts';
import { ms } from '../../domain/units.ts';
import { useDevice } from '../app-context.tsx';
import { CopyText } from './CopyText.tsx';
import { pocketVerdict } from './pocket-verdict.ts';

/** What a pocket check showed, what to change, and its record to be copied. */
export function PocketOutcome({ record }: { record: PocketRecord }) {
  const platform = useDevice((d) => d.platform);
  const verdict = pocketVerdict(record);
  const text = JSON.stringify(record, null, 2);
  const silence =
    record.longestSilenceMs < 1000 ? pocket.none : inWords(ms(record.longestSilenceMs));
  const facts = [
    [pocket.toEnd, record.heardToEnd ? pocket.yes : pocket.no],
    [pocket.longest, silence],
    [pocket.hidden, inWords(ms(record.hiddenMs))],
    [pocket.how, record.installed ? pocket.installed : pocket.tab],
  ] as const;
  return (
    <>
      <p className="notice" role="status">
        {verdict === 'good' && pocket.good}
        {verdict === 'not-locked' && pocket.goodShown}
        {verdict === 'gaps' && pocket.gaps(silence)}
        {verdict === 'stopped' && pocket.stopped}
      </p>
      <dl className="pairs">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className="figures">{value}</dd>
          </div>
        ))}
      </dl>
      {(verdict === 'gaps' || verdict === 'stopped') && (
        <section className="stack">
          <h2>{pocket.change}</h2>
          <ol className="steps">
            {pocket.advice[platform].map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
          <p>{pocket.advice.always}</p>
        </section>
      )}
      <details>
        <summary>{pocket.record}</summary>
        <div className="stack">
          <p>{pocket.recordHelp}</p>
          <pre className="written">{text}</pre>
          <CopyText text={text} name={pocket.copy} done={pocket.copied} />
          {typeof navigator.share === 'function' && (
            <button
              type="button"
              className="button"
              onClick={() => void navigator.share({ text }).catch(() => undefined)}
            >
              {pocket.share}
            </button>
          )}
        </div>
      </details>
    </>
  );
}
