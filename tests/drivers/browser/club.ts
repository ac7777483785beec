import type { Page } from 'playwright-core';
import { toRow } from '../../../src/platform/store/heard-row.ts';
import { people, TWELVE } from '../board/club.ts';

/** Writes a programme that was sent, and what its people told, into the app's own database. */
export function storeClub(page: Page, count: number): Promise<void> {
  const sent = { id: TWELVE.id, revision: 1, text: TWELVE.text, signature: '', at: 1 };
  return page.evaluate(
    ([programme, rows]) =>
      new Promise<void>((resolve, reject) => {
        const open = indexedDB.open('towpath');
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const tx = open.result.transaction(['heard', 'sent'], 'readwrite');
          tx.objectStore('sent').put(programme);
          for (const each of rows) tx.objectStore('heard').put(each);
          tx.onerror = () => reject(tx.error);
          tx.oncomplete = () => {
            open.result.close();
            resolve();
          };
        };
      }),
    [sent, people(count).map(toRow)] as const,
  );
}
