/** What sending and receiving is done with, each a piece of its own. */
export const receiving = () => import('./exchange-receive.ts');
export const publishing = () => import('./exchange-publish.ts');
export const judging = () => import('./exchange-judge.ts');
