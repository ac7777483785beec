import { type RefObject, useLayoutEffect, useRef, useState } from 'react';
import { pieceProblem, pieces } from '../../../copy/pieces.ts';
import { formatPlan } from '../../../domain/programme/format.ts';
import type { Plan } from '../../../domain/programme/plan.ts';
import { PARTS } from '../../../domain/programme/plan.ts';
import { planLength } from '../../../domain/programme/totals.ts';
import { FIRST_PLAN } from '../../../domain/workshop/new-pieces.ts';
import type { PiecePlace } from '../../../domain/workshop/pieces.ts';
import { itemAt, piecesOf } from '../../../domain/workshop/pieces.ts';
import type { EditResult } from '../../../domain/workshop/plan-edits.ts';
import { type Hand, keyOf } from './hand.ts';
import { PartPieces } from './PartPieces.tsx';
import type { Told } from './told.ts';

interface TappingProps {
  /** Of the text, or of the last that could be read. */
  readonly plan: Plan | undefined;
  /** There is a text that cannot be read, and a tap would take its place. */
  readonly replaces: boolean;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly onText: (text: string) => void;
  readonly told: Told;
}

/** The same session as pieces to be tapped. Every tap writes the text anew. */
export function Tapping({ plan, replaces, open, onOpen, onText, told }: TappingProps) {
  const root = useRef<HTMLDetailsElement>(null);
  const goTo = useFocusAfter(root, plan);
  return (
    <details
      ref={root}
      className="cell-tapping"
      open={open}
      onToggle={(event) => {
        if (!event.currentTarget.open) told.hush();
        onOpen(event.currentTarget.open);
      }}
    >
      <summary>{pieces.title}</summary>
      {open && replaces && <p className="soft">{pieces.replaces}</p>}
      {open && plan === undefined && (
        <button
          type="button"
          className="button"
          onClick={() => {
            goTo({ part: 'warm-up', path: [0] }, 'activity');
            onText(formatPlan(FIRST_PLAN));
            told.done(pieces.saidTotal(planLength(FIRST_PLAN)));
          }}
        >
          {pieces.start}
        </button>
      )}
      {open && plan !== undefined && (
        <AllPieces plan={plan} onText={onText} told={told} goTo={goTo} />
      )}
    </details>
  );
}

type GoTo = (at: PiecePlace, control: string) => void;

/** Puts the focus on a piece's control as soon as the changed plan is there. */
function useFocusAfter(root: RefObject<HTMLElement | null>, plan: Plan | undefined): GoTo {
  const wanted = useRef('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new plan is what it waits for
  useLayoutEffect(() => {
    if (wanted.current === '') return;
    root.current?.querySelector<HTMLElement>(wanted.current)?.focus();
    wanted.current = '';
  }, [plan]);
  return (at, control) => {
    wanted.current = `[data-control="${keyOf(at)} ${control}"]`;
  };
}

interface AllProps {
  readonly plan: Plan;
  readonly onText: (text: string) => void;
  readonly told: Told;
  readonly goTo: GoTo;
}

function AllPieces({ plan, onText, told, goTo }: AllProps) {
  const [opened, setOpened] = useState('');
  const numbers = numbersOf(plan);
  const apply = (result: EditResult, control?: string) => {
    if (!result.ok) {
      told.refuse(pieceProblem(result.error));
      return;
    }
    const { at, plan: changed } = result.value;
    if (control !== undefined) {
      goTo(at, control);
      // What is moved stays open; everything else that moves the focus closes it.
      setOpened(control === 'up' || control === 'down' ? keyOf(at) : '');
    }
    told.done(saidOf(changed, at));
    onText(formatPlan(changed));
  };
  const hand: Hand = { plan, numbers, opened, open: setOpened, apply, refuse: told.refuse };
  return (
    <div className="pieces">
      {PARTS.map((part) => (
        <PartPieces key={part} part={part} hand={hand} />
      ))}
    </div>
  );
}

/** What each piece is called by, from its key. */
const numbersOf = (plan: Plan): ReadonlyMap<string, number> =>
  new Map(
    Object.values(piecesOf(plan))
      .flat()
      .map(({ place, number }) => [keyOf(place), number]),
  );

/** What a tap did: the piece as it is now, and the whole. */
function saidOf(plan: Plan, at: PiecePlace): string {
  const item = itemAt(plan, at);
  const number = numbersOf(plan).get(keyOf(at)) ?? 0;
  if (item === undefined) return pieces.saidTotal(planLength(plan));
  return item.kind === 'step'
    ? pieces.saidStep(number, item, planLength(plan))
    : pieces.saidSets(number, item.count, planLength(plan));
}
