import type { FileShare } from '../../app/ports.ts';

/** Through the share sheet where it takes files of this kind, else saved by the browser. */
export const createFileShare = (): FileShare => ({
  async give(name, type, content) {
    const file = new File([content], name, { type });
    if (navigator.canShare?.({ files: [file] })) {
      try {
        await navigator.share({ files: [file], title: name });
        return;
      } catch (error) {
        // The person closed the sheet: that is an answer, not a fault.
        if (error instanceof DOMException && error.name === 'AbortError') return;
      }
    }
    save(file);
  },
});

/** Long enough for the slowest browser to have begun reading. */
const KEEP_ADDRESS_MS = 60_000;

function save(file: File): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), KEEP_ADDRESS_MS);
}
