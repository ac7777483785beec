import type { CDPSession } from 'playwright-core';

/** What wakes a page, by the names that the browser's trace gives it. */
const CAUSES = {
  TimerFire: 'timers',
  FireAnimationFrame: 'frames drawn by script',
  EventDispatch: 'events',
} as const;

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly args?: { readonly data?: { readonly frame?: string } };
}

type Woken = Readonly<Record<(typeof CAUSES)[keyof typeof CAUSES], number>>;

/** How often a page was woken while something went on, by cause. Other pages are not counted. */
export async function wakeUps(session: CDPSession, during: () => Promise<void>): Promise<Woken> {
  const events: TraceEvent[] = [];
  const collect = ({ value }: { value: unknown[] }) => events.push(...(value as TraceEvent[]));
  session.on('Tracing.dataCollected', collect);
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['devtools.timeline'] },
  });
  await during();
  const complete = new Promise((done) => session.once('Tracing.tracingComplete', done));
  await session.send('Tracing.end');
  await complete;
  session.off('Tracing.dataCollected', collect);
  const process = await processOf(session, events);
  const mine = events.filter(({ pid }) => pid === process);
  return Object.fromEntries(
    Object.entries(CAUSES).map(([event, name]) => [
      name,
      mine.filter((each) => each.name === event).length,
    ]),
  ) as Woken;
}

/** The process that drew the session's own page. */
async function processOf(
  session: CDPSession,
  events: readonly TraceEvent[],
): Promise<number | undefined> {
  const { frameTree } = await session.send('Page.getFrameTree');
  return events.find(({ args }) => args?.data?.frame === frameTree.frame.id)?.pid;
}
