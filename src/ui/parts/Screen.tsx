import { type ReactNode, useEffect, useRef } from 'react';
import { Link, useLocation } from 'wouter';
import { common } from '../../copy/common.ts';
import { Banners } from './Banners.tsx';
import { Mark } from './Mark.tsx';

const TOP = [
  ['/', common.sessions],
  ['/done', common.done],
  ['/settings', common.settings],
] as const;

function TopNav() {
  const [path] = useLocation();
  return (
    <header className="head">
      <Link href="/" className="mark">
        <Mark />
        {common.name}
      </Link>
      <nav aria-label={common.name}>
        {TOP.map(([href, name]) => {
          const here = href === '/' ? path === '/' || path.startsWith('/p/') : path === href;
          return (
            <Link
              key={href}
              href={href}
              className={here ? 'here' : ''}
              aria-current={here ? 'page' : undefined}
            >
              {name}
            </Link>
          );
        })}
      </nav>
    </header>
  );
}

let first = true;

/** Moves the reader to the top of a page that was just opened, but not when the app starts. */
export function useArrival<Top extends HTMLElement = HTMLHeadingElement>(title: string) {
  const heading = useRef<Top>(null);
  useEffect(() => {
    document.title = title === common.name ? common.name : `${title} · ${common.name}`;
  }, [title]);
  useEffect(() => {
    if (!first) {
      window.scrollTo(0, 0);
      heading.current?.focus({ preventScroll: true });
    }
    first = false;
  }, []);
  return heading;
}

interface ScreenProps {
  readonly title: string;
  readonly sub?: ReactNode;
  /** Where the way back leads; a page without one is at the top and has the main links. */
  readonly back?: {
    readonly href: string;
    readonly name: string;
    /** For a page of several steps under one address. */
    readonly onGo?: () => void;
  };
  readonly children: ReactNode;
  readonly foot?: ReactNode;
}

/** A page: the way back or the main links, what cannot wait, a title, the content, one decision. */
export function Screen({ title, sub, back, children, foot }: ScreenProps) {
  const heading = useArrival(title);
  return (
    <div className="page">
      {back === undefined ? (
        <TopNav />
      ) : (
        <header className="head">
          <Link href={back.href} {...(back.onGo ? { onClick: back.onGo } : {})}>
            {/* Seen, not said: else every page begins with "leftwards arrow". */}
            <span aria-hidden="true" className="arrow">
              {'← '}
            </span>
            {back.name}
          </Link>
        </header>
      )}
      <main>
        <div className="content">
          <Banners />
          <div className="title">
            <h1 ref={heading} tabIndex={-1}>
              {title}
            </h1>
            {sub !== undefined && <p className="soft">{sub}</p>}
          </div>
          {children}
        </div>
        {foot !== undefined && foot !== false && <div className="foot">{foot}</div>}
      </main>
    </div>
  );
}
