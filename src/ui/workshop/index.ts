/** The leader's workshop, in one piece that is fetched when somebody leads. */
import '../styles/forms.css';
import '../styles/exchange.css';
import '../styles/later.css';
import '../styles/workshop.css';

export { Workshop } from './Workshop.tsx';
