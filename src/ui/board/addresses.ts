/** Addresses of what comes back to a leader. */
export const boardsAt = '/board';
/** A programme's board. */
export const boardAt = (programmeId: string): string => `/board/${programmeId}`;
/** All that one person told. `person` as in `Heard`. */
export const personAt = (programmeId: string, person: string): string =>
  `/board/${programmeId}/who/${person}`;
/** A page beside the board: who needs a word, next week, who came, keeping and forgetting. */
export const boardPageAt = (
  programmeId: string,
  page: 'words' | 'next' | 'list' | 'keep',
): string => `/board/${programmeId}/${page}`;
