/** What the screens may know and ask of writing programmes. Fetched when a leader first writes. */
import type { Plan } from '../domain/programme/plan.ts';
import type { PlanProblem, ProgrammeProblem } from '../domain/programme/problem.ts';
import type { Programme } from '../domain/programme/programme.ts';
import type { Result } from '../domain/result.ts';
import type { Timeline } from '../domain/timeline/timeline.ts';
import type { Edit } from '../domain/workshop/edit.ts';
import type { EditRefusal } from '../domain/workshop/refusal.ts';
import type { Sheet } from '../domain/workshop/sheet.ts';
import type { StoreProblem } from './ports.ts';

/** A programme in writing, as "my programmes" lists it. */
export interface ShelfItem {
  /** Of the sheet on this phone; two sheets may be of one programme. */
  readonly key: string;
  readonly sheet: Sheet;
  /** UTC milliseconds. */
  readonly changedAt: number;
  /** The last try to keep it failed; it is tried again. */
  readonly problem?: StoreProblem;
}

/** How a cell's text was understood. */
export interface Reading {
  /** The plan of the text; of the last good text while it cannot be read. */
  readonly plan?: Plan;
  readonly timeline?: Timeline;
  /** In the order of the text; empty when it can be read. */
  readonly problems: readonly PlanProblem[];
}

/** The sheet that is open, with everything that follows from it. */
export interface OpenSheet {
  readonly key: string;
  readonly sheet: Sheet;
  /** By week, then group id, then session. */
  readonly readings: readonly Readonly<Record<string, readonly Reading[]>>[];
  /** What can be read of it, for checks, hearing and print; cells that never could are left out. */
  readonly outline: Pick<Programme, 'groups' | 'weeks' | 'goal' | 'startDate'>;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Everything typed so far is on this phone. */
  readonly saved: boolean;
  /** The last try to keep it failed; it is tried again with the next change. */
  readonly problem?: StoreProblem;
  /**
   * Another tab had written this sheet too, so this one became a sheet of its own: it was kept
   * under this key before.
   */
  readonly wasKey?: string;
}

/** Writing programmes, as the screens see it. */
export interface WorkshopState {
  readonly ready: boolean;
  /** What is kept could not be read; it is tried again. */
  readonly problem?: StoreProblem;
  /** Newest change first. */
  readonly shelf: readonly ShelfItem[];
  readonly open?: OpenSheet;
  /** Reads what is kept; safe to call again. */
  load(): Promise<void>;
  /** An id for a new programme, made from its title and chance. */
  newProgrammeId(title: string): string;
  /** A new sheet, kept at once and opened. @returns its key */
  create(sheet: Sheet): Promise<string>;
  /**
   * A sheet of a programme file. One that says the same as a kept one opens that;
   * another is kept and opened. @returns its key
   */
  createFromFile(text: string): Promise<Result<string, readonly ProgrammeProblem[]>>;
  /** A copy under an id and title of its own. @returns its key; undefined: there is no such sheet */
  copy(key: string, title: string): Promise<string | undefined>;
  /**
   * The one that is open already stays as it is, its way back included.
   * @returns false when there is no such sheet
   */
  openSheet(key: string): boolean;
  /** @returns why it was not done; nothing: it was, or there was nothing to do */
  edit(edit: Edit): EditRefusal | undefined;
  undo(): void;
  redo(): void;
  /** Only on the leader's word. */
  remove(key: string): Promise<void>;
  /**
   * The open sheet as a programme file's text, read back as participants' phones read it; or what
   * stands in the way, with paths into the file.
   */
  file(): Result<Programme, readonly ProgrammeProblem[]>;
}
