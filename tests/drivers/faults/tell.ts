/** One line for each fault that was tried: what it was, how often, and what was lost. */
export function tellFault(fault: string, tried: number, lost: string): void {
  console.log(`fault | ${fault} | ${tried} | ${lost}`);
}

/** The greatest of some losses in seconds, in words. */
export const atMost = (seconds: readonly number[], of: string): string =>
  `at most ${Math.max(0, ...seconds).toFixed(1)} s of ${of}`;
