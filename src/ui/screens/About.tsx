import { Link } from 'wouter';
import { about } from '../../copy/about.ts';
import { exchangeWays } from '../../copy/came.ts';
import { common } from '../../copy/common.ts';
import { effortWords } from '../../copy/effort.ts';
import { Screen } from '../parts/Screen.tsx';

const SCALE = [
  ['0', 0],
  ['1-2', 1],
  ['3-4', 3],
  ['5-6', 5],
  ['7-8', 7],
  ['9', 9],
  ['10', 10],
] as const;

/** What Towpath is, what it keeps, and what it cannot know. */
export function About() {
  return (
    <Screen title={about.title} back={{ href: '/settings', name: common.settings }}>
      <p>{about.what}</p>
      <section className="stack">
        <h2>{about.staysTitle}</h2>
        <ul className="bullets">
          {about.stays.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
      <section className="stack">
        <h2>{about.oneTitle}</h2>
        <p>{about.one}</p>
      </section>
      <section className="stack">
        <h2>{about.effortTitle}</h2>
        <dl className="pairs narrow">
          {SCALE.map(([name, rating]) => (
            <div key={name}>
              <dt className="figures">{name}</dt>
              <dd>{effortWords(rating)}</dd>
            </div>
          ))}
        </dl>
        <p>{about.effort}</p>
      </section>
      <section className="stack">
        <h2>{about.soundTitle}</h2>
        <p>{about.sound}</p>
      </section>
      <section className="stack">
        <h2>{about.careTitle}</h2>
        <p>{about.care}</p>
      </section>
      <div>
        <Link href="/lead" className="text-button">
          {exchangeWays.lead}
        </Link>
      </div>
      <p className="small soft">{about.licence}</p>
    </Screen>
  );
}
