/** On the day: all groups of a session from one start, led from one screen. */
import '../styles/running.css';
import '../styles/lead.css';

export { LeadDay } from './LeadDay.tsx';
export { Leading } from './Leading.tsx';
