import { useId } from 'react';
import type { Code, Sending } from '../../app/exchange-contract.ts';
import { cautions, HELP, STOP_SIGNS } from '../../copy/cautions.ts';
import { paper } from '../../copy/paper.ts';
import type { Week } from '../../domain/programme/programme.ts';
import { fillOf, Hatches } from '../parts/Hatches.tsx';
import { timelineOf } from '../parts/plans.ts';
import { type Texture, textureOf } from '../parts/strip-shape.ts';

interface FootProps {
  readonly week: Week;
  readonly title: string;
  readonly sending: Sending | undefined;
}

/** How strips are read, when to stop, and the programme's code. */
export function PaperFoot({ week, title, sending }: FootProps) {
  return (
    <footer className="paper-foot">
      <Key week={week} />
      <div className="paper-end" data-codes={sending?.codes.length ?? 0}>
        <Care />
        {sending !== undefined && <Codes sending={sending} title={title} />}
      </div>
    </footer>
  );
}

const ORDER: readonly Texture[] = ['still', 'walk', 'brisk', 'jog', 'run'];

/** Only what occurs on the page. */
function Key({ week }: { week: Week }) {
  const id = useId().replace(/[^\w-]/g, '');
  const seen = new Set(
    Object.values(week.sessions)
      .flat()
      .flatMap(({ plan }) => timelineOf(plan).segments.map(({ activity }) => textureOf(activity))),
  );
  return (
    <p className="paper-key">
      {paper.key}
      {ORDER.filter((texture) => seen.has(texture)).map((texture) => (
        <span key={texture}>
          <svg width="26" height="12" viewBox="0 0 26 12" aria-hidden="true">
            <Hatches id={`${id}${texture}`} />
            <rect
              x="0.75"
              y="0.75"
              width="24.5"
              height="10.5"
              fill={fillOf(`${id}${texture}`, texture)}
              stroke="currentColor"
              strokeWidth="1.5"
            />
          </svg>
          {paper.textures[texture]}
        </span>
      ))}
    </p>
  );
}

const sectionOf = (id: 'stop' | 'easy') => cautions.sections.find((each) => each.id === id);

/** The usual cautions, short: stop signs, what to do then, and whose word comes first. */
function Care() {
  return (
    <div className="paper-care">
      <h3>{sectionOf('stop')?.title}</h3>
      <ul>
        {STOP_SIGNS.map((sign) => (
          <li key={sign}>{sign}</li>
        ))}
      </ul>
      <p>
        <strong>{HELP.slice(0, 2).join(' ')}</strong> {HELP.slice(2).join(' ')}
      </p>
      <p>{sectionOf('easy')?.points.join(' ')}</p>
      <p>{cautions.notAdvice}</p>
    </div>
  );
}

/** A module narrower than this is lost by printers and cameras (common practice, no source). */
const MODULE_MM = 0.35;
const LEAST_MM = 32;

function Codes({ sending, title }: { sending: Sending; title: string }) {
  const { codes, link, linkIsLocal, revision } = sending;
  const host = linkIsLocal ? '' : hostOf(link);
  if (codes.length === 0)
    return <p className="paper-codes">{host !== '' && `${paper.host(host)}.`}</p>;
  return (
    <div className="paper-codes">
      <div>
        {codes.map((code, n) => (
          <figure key={code.path}>
            <CodeDrawn code={code} name={paper.code(title, n + 1, codes.length)} />
            <figcaption>{paper.part(n + 1, codes.length)}</figcaption>
          </figure>
        ))}
      </div>
      <p>
        {paper.scan} {paper.revision(revision)}. {host !== '' && `${paper.host(host)}.`}
      </p>
    </div>
  );
}

function CodeDrawn({ code: { size, path }, name }: { code: Code; name: string }) {
  const mm = `${Math.max(LEAST_MM, size * MODULE_MM)}mm`;
  return (
    <svg
      viewBox={`0 0 ${size} ${size}`}
      style={{ width: mm, height: mm }}
      role="img"
      aria-label={name}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}

/** Where the app is served from, as a person types it. */
function hostOf(link: string): string {
  try {
    const { host, pathname } = new URL(link);
    return `${host}${pathname}`.replace(/\/$/, '');
  } catch {
    return '';
  }
}
