import { Route, Switch } from 'wouter';
import { Find } from '../now/Find.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { piece } from '../piece.tsx';
import { About } from './About.tsx';
import { Again } from './Again.tsx';
import { Before } from './Before.tsx';
import { Cautions } from './Cautions.tsx';
import { EditEntry } from './EditEntry.tsx';
import { Entry } from './Entry.tsx';
import { Felt } from './Felt.tsx';
import { Install } from './Install.tsx';
import { Join } from './Join.tsx';
import { Log } from './Log.tsx';
import { NewEntry } from './NewEntry.tsx';
import { Pocket } from './Pocket.tsx';
import { Records } from './Records.tsx';
import { Running } from './Running.tsx';
import { SettingsScreen } from './SettingsScreen.tsx';
import { Tell } from './Tell.tsx';

/** Pieces of their own: plots, and what those who only take part never open. */
const HearSession = piece(async () => (await import('./HearSession.tsx')).HearSession);
const LookBack = piece(async () => (await import('../back/index.ts')).LookBack);
const Event = piece(async () => (await import('../back/index.ts')).Event);
const Board = piece(async () => (await import('../board/index.ts')).BoardRoutes);
const Workshop = piece(async () => (await import('../workshop/index.ts')).Workshop);

/** Every address but those of the first pages. */
export function LaterScreens() {
  return (
    <Switch>
      <Route path="/p/:id/find" component={Find} />
      <Route path="/p/:id/:week/:session/hear" component={HearSession} />
      <Route path="/p/:id/:week/:session" component={Before} />
      <Route path="/run" component={Running} />
      <Route path="/pocket" component={Pocket} />
      <Route path="/cautions" component={Cautions} />
      <Route path="/felt/:entry/again" component={Again} />
      <Route path="/felt/:entry" component={Felt} />
      <Route path="/done/new/:id?/:week?/:session?" component={NewEntry} />
      <Route path="/done/:entry/edit" component={EditEntry} />
      <Route path="/done/:entry" component={Entry} />
      <Route path="/done" component={Log} />
      <Route path="/join/:code?" component={Join} />
      <Route path="/lead/*?" component={Workshop} />
      <Route path="/board/*?" component={Board} />
      <Route path="/answer/:code?" component={Board} />
      <Route path="/back" component={LookBack} />
      <Route path="/event/:id" component={Event} />
      <Route path="/tell/:id" component={Tell} />
      <Route path="/records" component={Records} />
      <Route path="/settings" component={SettingsScreen} />
      <Route path="/about" component={About} />
      <Route path="/install" component={Install} />
      <Route component={NotHere} />
    </Switch>
  );
}
