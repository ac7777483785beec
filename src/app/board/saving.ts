import { calledOf } from '../../copy/board.ts';
import { boardFileName, boardsWords } from '../../copy/board-files.ts';
import { boardExport } from '../../domain/board/board-export.ts';
import { type OpenedBoards, readBoards, writeBoards } from '../../domain/board/file.ts';
import { everyKey, mergeBoards } from '../../domain/board/file-merge.ts';
import { previewOf } from '../../domain/board/file-preview.ts';
import { boardTable } from '../../domain/board/table.ts';
import { isLongEnough } from '../../domain/exchange/passphrase.ts';
import { fail, ok } from '../../domain/result.ts';
import type { BoardState } from '../board-contract.ts';
import type { BoardDesk, BoardNeeds } from './desk.ts';
import { writeWithDigests } from './with-digests.ts';

/** What leaves the device, and what comes back from a file. */
export type Saving = Pick<BoardState, 'save' | 'saveLocked' | 'openLocked' | 'takeIn'>;

/** Longest file that is looked at, in bytes: twice what the vault opens in characters. */
const FILE_MAX_BYTES = 128 * 1024 * 1024;

/** Files of a board: as a table, as data, or locked; the locked ones are read back too. */
export function createSaving(
  desk: BoardDesk,
  { ports, share }: Pick<BoardNeeds, 'ports' | 'share'>,
  state: () => BoardState,
): Saving {
  let opened: OpenedBoards | undefined;

  async function save(programmeId: string, what: 'csv' | 'json'): ReturnType<Saving['save']> {
    const read = await desk.read();
    if (!read.ok) return read;
    const { programmes, heard, days, setups } = state();
    const programme = programmes.find(({ id }) => id === programmeId);
    if (programme === undefined)
      return fail({ code: 'not-ours', detail: `programme ${programmeId}` });
    const kept = {
      heard: heard[programmeId] ?? [],
      days: days[programmeId] ?? [],
      ...(setups[programmeId] && { setup: setups[programmeId] }),
    };
    const [type, content] =
      what === 'csv'
        ? ['text/csv', boardTable({ programme, ...kept, today: desk.today() }, calledOf)]
        : ['application/json', boardExport(programme, kept, desk.now())];
    await share.give(boardFileName.board(programmeId, desk.today(), what), type, content);
    return ok(undefined);
  }

  return {
    save,
    async saveLocked(passphrase) {
      if (!isLongEnough(passphrase)) return fail({ code: 'passphrase-short' });
      const read = await desk.read();
      if (!read.ok) return read;
      const text = writeBoards(read.value, desk.now());
      const file = await ports.vault.lock(text, passphrase, boardsWords);
      if (!file.ok) return file;
      await share.give(boardFileName.locked(desk.today()), 'text/plain', file.value);
      return ok(undefined);
    },
    async openLocked(file, passphrase) {
      opened = undefined;
      if (file.size > FILE_MAX_BYTES) return fail({ code: 'backup-damaged' });
      const text = await ports.vault.open(await file.text(), passphrase);
      if (!text.ok) return text;
      const boards = readBoards(text.value);
      if (!boards.ok)
        return fail({ code: boards.error === 'newer' ? 'backup-newer' : 'backup-damaged' });
      const read = await desk.read();
      if (!read.ok) return read;
      const digests = await desk.digestsOf(everyKey(read.value, boards.value));
      if (!digests.ok) return digests;
      opened = boards.value;
      const titles = new Map(state().programmes.map(({ id, title }) => [id, title]));
      return ok(previewOf(read.value, boards.value, digests.value, titles));
    },
    async takeIn() {
      if (opened === undefined) return ok(undefined);
      const given = opened;
      const done = await writeWithDigests(
        desk,
        (here) => everyKey(here, given),
        (here, digests) => mergeBoards(here, given, digests),
      );
      if (done.ok) opened = undefined;
      return done;
    },
  };
}
