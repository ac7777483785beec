/**
 * Screens that nobody sees first, in one piece that is fetched once the first page stands. It is
 * kept on the phone with the rest, so that it is there without signal too.
 */
import '../styles/by-hand.css';
import '../styles/forms.css';
import '../styles/exchange.css';
import '../styles/later.css';

export { About } from './About.tsx';
export { Again, AskAgain } from './Again.tsx';
export { Before } from './Before.tsx';
export { EditEntry, NewEntry } from './ByHand.tsx';
export { Cautions } from './Cautions.tsx';
export { Entry } from './Entry.tsx';
export { Felt } from './Felt.tsx';
export { Install } from './Install.tsx';
export { Join } from './Join.tsx';
export { Log } from './Log.tsx';
export { Pocket } from './Pocket.tsx';
export { Records } from './Records.tsx';
export { Running } from './Running.tsx';
export { SettingsScreen } from './SettingsScreen.tsx';
export { Tell } from './Tell.tsx';
