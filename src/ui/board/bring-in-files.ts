/** Files of what was dropped, folders within folders included. */
import type { IntakeSource } from '../../app/board-contract.ts';

/** More are not looked at: a whole disk was dropped by mistake. */
export const MOST_FILES = 20_000;

/** Files as they were picked, for bringing in; those past `MOST_FILES` are left out. */
export const sourcesOf = (files: Iterable<File>): readonly IntakeSource[] =>
  [...files]
    .slice(0, MOST_FILES)
    // A folder's picker says where in it a file lies.
    .map((file) => ({ name: file.webkitRelativePath || file.name, content: file }));

const filesIn = (folder: FileSystemDirectoryEntry): Promise<readonly FileSystemEntry[]> => {
  const reader = folder.createReader();
  // Chromium gives a hundred at a time, and nothing when there are no more.
  const read = (): Promise<readonly FileSystemEntry[]> =>
    new Promise((resolve) => reader.readEntries(resolve, () => resolve([])));
  const all = async (): Promise<readonly FileSystemEntry[]> => {
    const found: FileSystemEntry[] = [];
    for (let some = await read(); some.length > 0; some = await read()) found.push(...some);
    return found;
  };
  return all();
};

const isFile = (entry: FileSystemEntry): entry is FileSystemFileEntry => entry.isFile;

async function walk(entry: FileSystemEntry, found: IntakeSource[]): Promise<void> {
  if (found.length >= MOST_FILES) return;
  if (isFile(entry)) {
    const file = await new Promise<File | undefined>((resolve) =>
      entry.file(resolve, () => resolve(undefined)),
    );
    if (file !== undefined) found.push({ name: entry.fullPath.slice(1), content: file });
    return;
  }
  for (const inside of await filesIn(entry as FileSystemDirectoryEntry)) await walk(inside, found);
}

/** Everything that was dropped: files, folders, or a text. Read at once: a drop is soon forgotten. */
export function dropped(data: DataTransfer): Promise<readonly IntakeSource[]> {
  const entries = [...data.items].flatMap((item) => item.webkitGetAsEntry?.() ?? []);
  const text = data.getData('text/plain');
  const files = sourcesOf(data.files);
  const read = async () => {
    if (entries.length === 0)
      return files.length === 0 && text !== '' ? [{ name: '', content: text }] : files;
    const found: IntakeSource[] = [];
    for (const entry of entries) await walk(entry, found);
    return found;
  };
  return read();
}
