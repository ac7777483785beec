import { useEffect, useState } from 'react';
import { useApp } from '../app-context.tsx';

type Share = (text: string) => Promise<boolean>;

/** The phone's share sheet for words, where it takes them; fetched when a page shows a message. */
export function useShare(): Share | undefined {
  const app = useApp();
  const [share, setShare] = useState<Share>();
  useEffect(() => {
    let isGone = false;
    app.telling().then(
      (telling) => {
        const { canShareWords, shareWords } = telling.getState();
        if (!isGone && canShareWords) setShare(() => shareWords);
      },
      // Without the piece the message can still be copied.
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, [app]);
  return share;
}
