import { useEffect, useRef, useState } from 'react';
import { exchangeProblem } from '../../copy/exchange.ts';
import { join } from '../../copy/join.ts';
import { useApp } from '../app-context.tsx';

/** The camera's picture while codes are looked for; leaving the page puts the camera out. */
export function Scanner({ onStop }: { onStop: () => void }) {
  const store = useApp().received;
  const video = useRef<HTMLVideoElement>(null);
  const [problem, setProblem] = useState('');
  useEffect(() => {
    let isGone = false;
    let stop = () => {};
    const look = async () => {
      if (video.current === null) return;
      const watching = await store.getState().scan(video.current);
      if (!watching.ok) return setProblem(exchangeProblem(watching.error));
      stop = watching.value;
      if (isGone) stop();
    };
    void look();
    return () => {
      isGone = true;
      stop();
    };
  }, [store]);
  return (
    <div className="stack">
      <div role="alert">{problem !== '' && <p className="notice">{problem}</p>}</div>
      {problem === '' && <p>{join.scanning}</p>}
      <video
        ref={video}
        className="camera"
        hidden={problem !== ''}
        aria-label={join.camera}
        muted
        playsInline
      />
      <div>
        <button type="button" className="button" onClick={onStop}>
          {join.stop}
        </button>
      </div>
    </div>
  );
}
