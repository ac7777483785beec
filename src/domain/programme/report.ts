import type { Folded } from './fold.ts';
import { placeAt } from './fold.ts';
import type { Detail, PlanCode, PlanProblem } from './problem.ts';
import type { Span } from './raw.ts';

/** Keeps the first problem that it is told: the tree is walked in the order of the text. */
export class Report {
  first: PlanProblem | undefined;
  readonly original: string;
  readonly folded: Folded;

  constructor(original: string, folded: Folded) {
    this.original = original;
    this.folded = folded;
  }

  /** The text of a span as it was typed, without the space around it. */
  typed({ start, end }: Span): string {
    return this.original.slice(this.originOf(start), this.originOf(end));
  }

  say(code: PlanCode, span: Span, detail?: Detail): undefined {
    if (this.first !== undefined) return;
    const spaces = this.folded.text.slice(span.start, span.end).trimEnd().length;
    const end = spaces === 0 ? span.end : span.start + spaces;
    const place = placeAt(this.original, this.originOf(span.start), this.originOf(end));
    const found = this.typed({ start: span.start, end });
    this.first = { code, place, found, ...(detail ? { detail } : {}) };
  }

  /** What stands between a place and the start of its line is blank. */
  startsLine(offset: number): boolean {
    return /(^|\n) *$/.test(this.folded.text.slice(0, offset));
  }

  private originOf(offset: number): number {
    return this.folded.origin[offset] ?? this.original.length;
  }
}
