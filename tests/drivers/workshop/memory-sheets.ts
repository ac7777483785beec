import type { SheetStore, StoredSheet } from '../../../src/app/exchange-ports.ts';
import type { StoreProblem } from '../../../src/app/ports.ts';
import { fail, ok } from '../../../src/domain/result.ts';

/** Sheets in memory, with the promises of the real store. Two workshops over one are two tabs. */
export class MemorySheets implements SheetStore {
  readonly there = new Map<string, StoredSheet>();
  /** Every state that was written, in order. */
  readonly written: StoredSheet[] = [];
  /** While set, nothing can be read or written. */
  broken: StoreProblem | undefined;

  sheets = async () => (this.broken ? fail(this.broken) : ok([...this.there.values()]));

  putSheet: SheetStore['putSheet'] = async (sheet, read) => {
    if (this.broken) return fail(this.broken);
    const before = this.there.get(sheet.key);
    if (before && before.tab !== sheet.tab && before.mark !== read)
      return fail({ code: 'not-ours', detail: sheet.key });
    this.there.set(sheet.key, sheet);
    this.written.push(sheet);
    return ok(undefined);
  };

  removeSheet: SheetStore['removeSheet'] = async (key) => {
    if (this.broken) return fail(this.broken);
    this.there.delete(key);
    return ok(undefined);
  };
}
