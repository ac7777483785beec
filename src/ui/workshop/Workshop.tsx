import { Route, Switch, useParams } from 'wouter';
import { NotHere } from '../parts/NotHere.tsx';
import { piece } from '../piece.tsx';
import { Desk } from './Desk.tsx';
import { Details } from './Details.tsx';
import { DraftPage } from './DraftPage.tsx';
import { HearPage } from './HearPage.tsx';
import { PaperPage } from './PaperPage.tsx';
import { SendPage } from './SendPage.tsx';
import { SentAgain } from './SentBefore.tsx';
import { Shelf } from './Shelf.tsx';
import { useWorkshop, WorkshopProvider } from './workshop-context.tsx';

/** A piece of its own: needed in a park, not at a desk. */
const LeadDay = piece(async () => (await import('../lead/index.ts')).LeadDay);
const Leading = piece(async () => (await import('../lead/index.ts')).Leading);

/** Everything under "I lead a group": each step has an address, so that the way back is the phone's. */
export function Workshop() {
  return (
    <WorkshopProvider>
      <Switch>
        <Route path="/lead" component={Shelf} />
        <Route path="/lead/sent/:id" component={SentAgain} />
        <Route path="/lead/:key/*?" component={OneSheet} />
      </Switch>
    </WorkshopProvider>
  );
}

function OneSheet() {
  const { key } = useParams<{ key: string }>();
  const isThere = useWorkshop(({ shelf }) => shelf.some((item) => item.key === key));
  if (!isThere) return <NotHere />;
  return (
    <Switch>
      <Route path="/lead/:key" component={Desk} />
      <Route path="/lead/:key/details" component={Details} />
      <Route path="/lead/:key/draft/:seen?" component={DraftPage} />
      <Route path="/lead/:key/day" component={LeadDay} />
      <Route path="/lead/:key/day/go" component={Leading} />
      <Route path="/lead/:key/paper" component={PaperPage} />
      <Route path="/lead/:key/send" component={SendPage} />
      <Route path="/lead/:key/week/:week" component={Desk} />
      <Route path="/lead/:key/:week/:group/:session" component={Desk} />
      <Route path="/lead/:key/:week/:group/:session/hear" component={HearPage} />
      <Route component={NotHere} />
    </Switch>
  );
}
