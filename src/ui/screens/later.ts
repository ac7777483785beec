/**
 * Screens that nobody sees first, in one piece that is fetched once the first page stands. It is
 * kept on the phone with the rest, so that it is there without signal too.
 */
import '../styles/by-hand.css';
import '../styles/forms.css';
import '../styles/exchange.css';
import '../styles/later.css';

export { NextLine } from '../now/NextLine.tsx';
export { NowCard } from '../now/NowCard.tsx';
export { Ways } from '../now/Ways.tsx';
export { WeekTag } from '../now/WeekTag.tsx';
export { AgreedStartCutOff } from '../parts/AgreedStartCutOff.tsx';
export { InstallHint } from '../parts/InstallHint.tsx';
export { AskAgain } from './Again.tsx';
export { LaterScreens } from './LaterScreens.tsx';
