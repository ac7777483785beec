/** The files that the app gives out, taken where it makes them: no driver shows them all alike. */
import { type Person, until } from './person.ts';

interface Kept {
  keptFiles?: File[];
}

/** From now on, until the page is loaded anew, what is given out is kept. */
export const keepFiles = ({ tab }: Person): Promise<void> =>
  tab.run(() => {
    const kept: File[] = [];
    (window as Kept).keptFiles = kept;
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (what: Blob | MediaSource) => {
      if (what instanceof File) kept.push(what);
      return make(what);
    };
  });

/** The text of the last file that was given out. */
export const lastFile = ({ tab }: Person): Promise<string> =>
  until('a file', () =>
    tab.run(async () => (await (window as Kept).keptFiles?.pop()?.text()) ?? undefined),
  );
