import { Link } from 'wouter';
import { wordsPage } from '../../copy/words-page.ts';

const words = wordsPage.sign;

/** What a leader does about a warning sign that was told, and what a leader does not do. */
export function WordSigns() {
  return (
    <div className="notice alarm">
      <h3>{words.you}</h3>
      <Points points={words.dos} />
      <h3>{words.not}</h3>
      <Points points={words.donts} />
      <details>
        <summary>{words.help}</summary>
        <Points points={words.steps} />
      </details>
      <p className="small">{words.notAdvice}</p>
      <div>
        <Link href="/cautions" className="text-button">
          {words.all}
        </Link>
      </div>
    </div>
  );
}

const Points = ({ points }: { points: readonly string[] }) => (
  <ul className="bullets">
    {points.map((point) => (
      <li key={point}>{point}</li>
    ))}
  </ul>
);
