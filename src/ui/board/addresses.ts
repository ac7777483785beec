/** Addresses of what comes back to a leader. */
export const boardsAt = '/board';
export const boardAt = (programmeId: string): string => `/board/${programmeId}`;
export const personAt = (programmeId: string, person: string): string =>
  `/board/${programmeId}/who/${person}`;
export const boardPageAt = (
  programmeId: string,
  page: 'words' | 'next' | 'list' | 'keep',
): string => `/board/${programmeId}/${page}`;
