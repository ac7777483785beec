/** What sending and receiving is done with, each a piece of its own. */
export const receiving = () => import('./exchange-receive.ts');
/** The leader's keys, and sending. */
export const publishing = () => import('./exchange-publish.ts');
/** Who sent what came, and how it stands to what is here. */
export const judging = () => import('./exchange-judge.ts');
