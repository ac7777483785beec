/** What the first page of a programme shows once its advice has been fetched. */
import '../styles/forms.css';
import '../styles/later.css';

export { NowCard } from './NowCard.tsx';
export { WeekTag } from './WeekTag.tsx';
