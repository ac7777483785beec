/**
 * Does a job once what was just rendered has been drawn, so that it does not stand in its way. A
 * page that nobody sees is not drawn: there it is done at once.
 *
 * @returns calls the job off, also when it was done already
 */
export function afterPaint(job: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let frame: number | undefined;
  // A frame's callbacks come before it is drawn, a timer after.
  const behind = () => {
    timer = setTimeout(job);
  };
  if (document.hidden) behind();
  else frame = requestAnimationFrame(behind);
  return () => {
    if (frame !== undefined) cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}

/** When what was just rendered has been drawn. */
export const painted = (): Promise<void> => new Promise((done) => void afterPaint(done));
