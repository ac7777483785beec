/** Looking back and towards the event: a piece of its own, with the plots and their packages. */
import '../styles/forms.css';
import '../styles/exchange.css';
import '../styles/later.css';
import '../styles/back.css';

export { Event } from './Event.tsx';
export { LookBack } from './LookBack.tsx';
