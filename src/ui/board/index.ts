/** What only a leader opens: a piece of its own. */
import '../styles/forms.css';
import '../styles/exchange.css';
import '../styles/later.css';
import '../styles/back.css';
import '../styles/board.css';

export { BoardRoutes } from './BoardRoutes.tsx';
