/** What the workshop's record says by itself. */

/** The title of a sheet that was kept apart because another tab had written it too. */
export const apartTitle = (title: string, n: number): string =>
  `${title} (other window${n > 1 ? ` ${n}` : ''})`;
