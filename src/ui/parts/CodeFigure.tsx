import type { Code } from '../../app/exchange-contract.ts';

interface CodeFigureProps {
  readonly code: Code;
  readonly title: string;
  readonly name: string;
  /** On the screen one part at a time; on paper all of them. */
  readonly shown: boolean;
}

/** One symbol to be scanned, as large as it can be. */
export function CodeFigure({ code, title, name, shown }: CodeFigureProps) {
  return (
    <figure className="stack tight code" data-shown={shown}>
      <svg
        viewBox={`0 0 ${code.size} ${code.size}`}
        role="img"
        aria-label={`${title}. ${name}`}
        shapeRendering="crispEdges"
      >
        <rect width={code.size} height={code.size} fill="#fff" />
        <path d={code.path} fill="#000" />
      </svg>
      <figcaption>{name}</figcaption>
    </figure>
  );
}
