/** What only a leader opens: a piece of its own. */
export { BoardRoutes } from './BoardRoutes.tsx';
