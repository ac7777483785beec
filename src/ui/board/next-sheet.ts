import { useMemo } from 'react';
import { nextPage as words } from '../../copy/next-page.ts';
import { editRefusal } from '../../copy/refusals.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { sheetOfProgramme } from '../../domain/workshop/file.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';
import { useWorkshop, useWorkshopStore } from '../workshop/workshop-context.tsx';
import { editsTo, type Texts } from './next-standing.ts';

interface NextSheet {
  /** Of the sheet that is written on; none is on the shelf as yet. */
  readonly key?: string;
  /** As it is written now; what was sent, while nothing is written. */
  readonly sheet: Sheet;
  /** The last try to keep it failed; it is tried again. */
  readonly isUnsaved: boolean;
  /**
   * Makes a group's sessions of a week say these texts, as edits that can be undone at the desk.
   *
   * @returns why it was not done, in a sentence; empty: it was
   */
  readonly write: (at: { group: string; next: number }, texts: Texts) => Promise<string>;
}

/** The programme in writing: what was changed last on the shelf, or made from what was sent. */
export function useNextSheet(programme: Programme): NextSheet {
  const store = useWorkshopStore();
  const item = useWorkshop(({ shelf }) => shelf.find(({ sheet }) => sheet.id === programme.id));
  const open = useWorkshop((state) => (state.open?.key === item?.key ? state.open : undefined));
  const fromSent = useMemo(() => sheetOfProgramme(programme), [programme]);

  const opened = async (): Promise<boolean> => {
    if (item !== undefined) return store.getState().openSheet(item.key);
    const made = await store.getState().createFromFile(programme.text);
    return made.ok && store.getState().openSheet(made.value);
  };

  return {
    ...(item === undefined ? {} : { key: item.key }),
    sheet: open?.sheet ?? item?.sheet ?? fromSent,
    isUnsaved: (open?.problem ?? item?.problem) !== undefined,
    async write(at, texts) {
      const isOpen = await opened();
      const before = store.getState().open?.sheet;
      if (!isOpen || before === undefined) return words.refused;
      for (const edit of editsTo(before, at, texts)) {
        const refusal = store.getState().edit(edit);
        if (refusal === undefined) continue;
        // All of it or nothing: half a week is no decision.
        store.getState().edit({ kind: 'replace', sheet: before });
        return editRefusal(refusal);
      }
      return '';
    },
  };
}
