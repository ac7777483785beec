import { useEffect, useRef, useState } from 'react';
import { join } from '../../copy/join.ts';
import type { Result } from '../../domain/result.ts';

interface ScannerProps<P> {
  /** What to do, in a sentence. */
  readonly hint: string;
  readonly stop: string;
  /** Looks for codes until what it gives is called. */
  readonly scan: (video: HTMLVideoElement) => Promise<Result<() => void, P>>;
  readonly said: (problem: P) => string;
  readonly onStop: () => void;
}

/** The camera's picture while codes are looked for; leaving the page puts the camera out. */
export function Scanner<P>({ hint, stop: stopName, scan, said, onStop }: ScannerProps<P>) {
  // Once for the life of the picture, whatever is drawn around it.
  const start = useRef({ scan, said });
  const video = useRef<HTMLVideoElement>(null);
  const [problem, setProblem] = useState('');
  useEffect(() => {
    let isGone = false;
    let stop = () => {};
    const look = async () => {
      if (video.current === null) return;
      const { scan, said } = start.current;
      const watching = await scan(video.current);
      if (!watching.ok) return setProblem(said(watching.error));
      stop = watching.value;
      if (isGone) stop();
    };
    void look();
    return () => {
      isGone = true;
      stop();
    };
  }, []);
  return (
    <div className="stack">
      <div role="alert">{problem !== '' && <p className="notice">{problem}</p>}</div>
      {problem === '' && <p>{hint}</p>}
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
          {stopName}
        </button>
      </div>
    </div>
  );
}
