/** Built for the browser and put into a page by itself: the store, to be called from a test. */
import { createBoardStore } from '../../../src/platform/store/boards.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { createSheetStore } from '../../../src/platform/store/sheets.ts';
import { createStore } from '../../../src/platform/store/store.ts';
import { everythingIn } from '../database.ts';

export const openStore = () => createStore(connect());

declare global {
  interface Window {
    boards: ReturnType<typeof createBoardStore>;
    everything: () => ReturnType<typeof everythingIn>;
    sheets: ReturnType<typeof createSheetStore>;
    openStore: typeof openStore;
    store: ReturnType<typeof openStore>;
  }
}

window.openStore = openStore;
window.everything = () => everythingIn();
window.store = openStore();
window.sheets = createSheetStore(connect());
window.boards = createBoardStore(connect());
