import { useEffect, useRef, useState } from 'react';
import type { Reading } from '../../../app/workshop-contract.ts';
import { cellWords, understood } from '../../../copy/cell.ts';
import { length } from '../../../copy/times.ts';

/** Quiet after the last key, until what was understood is read out: not with every letter. */
const SETTLED_MS = 900;

export interface Told {
  readonly text: string;
  /** To be seen as well as read out. */
  readonly shown: boolean;
  readonly tell: (text: string, shown: boolean) => void;
  /** A key was pressed in the text. */
  readonly onTyped: () => void;
}

/** What a screen reader is told about the text, in one sentence. */
function sentenceOf({ plan, timeline, problems }: Reading): string {
  const [problem] = problems;
  if (problem !== undefined) return cellWords.mistake(problem);
  return plan && timeline ? `${understood(plan)} ${length(timeline.total)}.` : '';
}

/** One voice for all that happens in a cell: what a tap did, and what typing came to. */
export function useTold(reading: Reading): Told {
  const [{ text, shown }, setTold] = useState({ text: '', shown: false });
  const typed = useRef(false);
  const sentence = sentenceOf(reading);
  useEffect(() => {
    if (!typed.current) return;
    const timer = setTimeout(() => {
      typed.current = false;
      setTold({ text: sentence, shown: false });
    }, SETTLED_MS);
    return () => clearTimeout(timer);
  }, [sentence]);
  return {
    text,
    shown,
    tell: (text, shown) => {
      typed.current = false;
      setTold({ text, shown });
    },
    onTyped: () => {
      typed.current = true;
      setTold({ text: '', shown: false });
    },
  };
}
