import { DEMO_PROGRAMME_TEXT } from '../../app/demo/demo.ts';
import { lead } from '../../copy/lead.ts';
import { blankSheet, isBlank } from '../../domain/workshop/blank.ts';
import { sheetOf } from '../../domain/workshop/file.ts';
import { useWorkshopStore } from './workshop-context.tsx';

/** The ways to begin a programme. Each gives the key of the new sheet. */
export function useBegin() {
  const store = useWorkshopStore();
  const { create, newProgrammeId } = store.getState();
  return {
    /** One that was begun and left as it was is taken, not another beside it. */
    async blank(): Promise<string> {
      const left = store.getState().shelf.find(({ sheet }) => isBlank(sheet));
      return left?.key ?? create(blankSheet(newProgrammeId(''), 'en'));
    },
    /** Under an id of its own: the example is a programme that everyone has. */
    async example(): Promise<string | undefined> {
      const read = sheetOf(DEMO_PROGRAMME_TEXT);
      if (!read.ok) return undefined;
      return create({ ...read.value, id: newProgrammeId(read.value.title) });
    },
  };
}

/** The example as a file that can be opened in a text editor. */
export function saveExample(): void {
  const text = `${JSON.stringify(JSON.parse(DEMO_PROGRAMME_TEXT), null, 2)}\n`;
  saveText(lead.exampleName, text);
}

/** Offers a text as a file to keep. */
export function saveText(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
