/**
 * A page that is behind another draws nothing, and asks for no frame: then this long, in
 * milliseconds, is long enough.
 */
const UNSEEN_MS = 300;

/**
 * Does a job once what was just rendered has been drawn, so that it does not stand in its way.
 * Done once; what is answered calls it off.
 */
export function afterPaint(job: () => void): () => void {
  let timer = setTimeout(run, UNSEEN_MS);
  const frame = requestAnimationFrame(() => {
    clearTimeout(timer);
    // A frame's callbacks come before it is drawn, a timer after.
    timer = setTimeout(run);
  });
  function run() {
    cancelAnimationFrame(frame);
    job();
  }
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}
