import type { AllBoards, OpenedBoards } from './file.ts';
import { type Digests, mergeBoards } from './file-merge.ts';
import { forgottenUntil } from './forget.ts';

const sessionsOf = (heard: AllBoards['heard']): number =>
  heard.reduce((sum, { entries }) => sum + entries.length, 0);

/** What a file would bring. Nothing is kept by asking. @param titles by programme id, of those here */
export function previewOf(
  here: AllBoards,
  given: OpenedBoards,
  digests: Digests,
  titles: ReadonlyMap<string, string>,
) {
  const merged = mergeBoards(here, given, digests);
  const before = new Map(here.heard.map((heard) => [heard.key, heard]));
  const setups = new Map(here.setups.map((setup) => [setup.programmeId, setup]));
  const ids = [given.heard, given.days, given.setups].flatMap((list) =>
    list.map(({ programmeId }) => programmeId),
  );
  const after = new Map(merged.heard.map((heard) => [heard.key, heard]));
  const isOut = ({ key, programmeId }: AllBoards['heard'][number]): boolean =>
    !before.has(key) &&
    !after.has(key) &&
    forgottenUntil(setups.get(programmeId), digests.get(key)) !== undefined;
  return {
    programmes: [...new Set(ids)].map((id) => {
      const title = titles.get(id);
      return title === undefined ? { id } : { id, title };
    }),
    people: given.heard.length,
    newPeople: merged.heard.filter(({ key }) => !before.has(key)).length,
    sessions: sessionsOf(given.heard),
    newSessions: merged.heard.reduce(
      (sum, { key, entries }) =>
        sum + Math.max(0, entries.length - (before.get(key)?.entries.length ?? 0)),
      0,
    ),
    forgotten: given.heard.filter(isOut).length,
  };
}
