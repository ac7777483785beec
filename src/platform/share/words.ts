import type { Words } from '../../app/exchange-ports.ts';

/** Words through the share sheet, where there is one. */
export const createWords = (): Words => ({
  canShare: () => typeof globalThis.navigator?.share === 'function',
  async share(text) {
    try {
      await navigator.share({ text });
      return true;
    } catch {
      // Closed by the person, or refused by the browser: either way it was not handed on.
      return false;
    }
  },
});
