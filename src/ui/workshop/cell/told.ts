import { useEffect, useRef, useState } from 'react';
import type { Reading } from '../../../app/workshop-contract.ts';
import { cellWords, understood } from '../../../copy/cell.ts';
import { length } from '../../../copy/times.ts';

/** Quiet after the last key, until what was understood is read out: not with every letter. */
const SETTLED_MS = 900;

/** What was read of the text is seen above; what a tap did, or could not do, only here. */
type Kind = 'read' | 'done' | 'refused';

/** What is said in a cell just now, and the ways to say something else. */
export interface Told {
  readonly text: string;
  readonly kind: Kind;
  readonly done: (text: string) => void;
  readonly refuse: (text: string) => void;
  /** Nothing is to be said any more. */
  readonly hush: () => void;
  /** A key was pressed in the text. */
  readonly onTyped: () => void;
}

const NOTHING: { readonly text: string; readonly kind: Kind } = { text: '', kind: 'read' };

/** What a screen reader is told about the text, in one sentence. */
function sentenceOf({ plan, timeline, problems }: Reading): string {
  const [problem] = problems;
  if (problem !== undefined) return cellWords.mistake(problem);
  return plan && timeline ? `${understood(plan)} ${length(timeline.total)}.` : '';
}

/** One voice for all that happens in a cell: what a tap did, and what typing came to. */
export function useTold(reading: Reading): Told {
  const [told, setTold] = useState(NOTHING);
  const typed = useRef(false);
  const sentence = sentenceOf(reading);
  useEffect(() => {
    if (!typed.current) return;
    const timer = setTimeout(() => {
      typed.current = false;
      setTold({ text: sentence, kind: 'read' });
    }, SETTLED_MS);
    return () => clearTimeout(timer);
  }, [sentence]);
  const tell = (kind: Kind) => (text: string) => {
    typed.current = false;
    setTold({ text, kind });
  };
  return {
    ...told,
    done: tell('done'),
    refuse: tell('refused'),
    hush: () => setTold(NOTHING),
    onTyped: () => {
      typed.current = true;
      setTold(NOTHING);
    },
  };
}
