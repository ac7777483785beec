import type { RawEntry, Span } from './raw.ts';
import type { Report } from './report.ts';

/** Says what is wrong where the grammar stopped, or where two things stand side by side. */
export function sayLeftover(from: number, report: Report, before: RawEntry | undefined): void {
  const { text } = report.folded;
  const start = from + (/^[ \n]*/.exec(text.slice(from))?.[0].length ?? 0);
  const rest = text.slice(start);
  const word = /^[^\s;,+/()@"]*/.exec(rest)?.[0] ?? '';
  const end = start + Math.max(1, word.length);
  const span: Span = { start, end };
  if (rest.startsWith(')')) report.say('stray-close', span);
  else if (/^[@"]/.test(rest) && before?.kind === 'repeat')
    report.say('extra-on-brackets', {
      start,
      end: start + (/^(@[^;,+)\n]*|"[^"\n]*"?)/.exec(rest)?.[0].length ?? 1),
    });
  else if (/^[-\u2022\u2013\u25cf]/.test(rest) && report.startsLine(start))
    report.say('bullet', { start, end: start + 1 });
  else if (/^[.\-|>~:\u2022\u2190-\u21ff]/.test(rest))
    report.say('bad-separator', { start, end: start + 1 });
  else report.say('leftover', span);
}
