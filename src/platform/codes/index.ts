import type { Codes } from '../../app/exchange-ports.ts';

/** Codes to be shown and to be read. Each side is fetched when it is first needed. */
export const createCodes = (): Codes => ({
  draw: async (text) => (await import('./draw.ts')).drawCode(text),
  inPicture: async (picture) => (await import('./picture.ts')).readPicture(picture),
  watch: async (video, saw) => (await import('./camera.ts')).watchCamera(video, saw),
});
