import { useCallback, useEffect, useState } from 'react';
import type { Hearing, PieceToHear } from '../../app/contract.ts';
import type { Talk } from '../../domain/cues/cue.ts';
import { useApp, usePack } from '../app-context.tsx';

interface Found {
  readonly hearing?: Hearing;
  /** What makes it could not be fetched. */
  readonly failed: boolean;
  retry(): void;
}

/** What there is to hear of a session; made again when the voice has come. */
export function useHearing(piece: PieceToHear, talk: Talk): Found {
  const { exporter } = useApp();
  const ready = usePack(({ pack }) => pack.name === 'ready');
  const [hearing, setHearing] = useState<Hearing>();
  const [failed, setFailed] = useState(false);
  const [again, setAgain] = useState(0);
  const retry = useCallback(() => setAgain((n) => n + 1), []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a voice that came, or a new try, makes it anew
  useEffect(() => {
    let wanted = true;
    setFailed(false);
    exporter.hear(piece, talk).then(
      (made) => wanted && setHearing(made),
      () => wanted && setFailed(true),
    );
    return () => {
      wanted = false;
    };
  }, [exporter, piece, talk, ready, again]);
  return { ...(hearing === undefined ? {} : { hearing }), failed, retry };
}
