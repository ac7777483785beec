import { Route, Switch, useParams } from 'wouter';
import { NotHere } from '../parts/NotHere.tsx';
import { BoardPage } from './BoardPage.tsx';
import { Boards } from './Boards.tsx';
import { BoardProvider, useBoardState } from './board-context.tsx';
import { KeepPage } from './KeepPage.tsx';
import { ListPage } from './ListPage.tsx';
import { NextPage } from './NextPage.tsx';
import { PersonPage } from './PersonPage.tsx';
import { WordsPage } from './WordsPage.tsx';

/** Everything that comes back to a leader, and the links of answers. */
export function BoardRoutes() {
  return (
    <BoardProvider>
      <Switch>
        <Route path="/board" component={Boards} />
        <Route path="/answer/:code?" component={Boards} />
        <Route path="/board/:id/*?" component={OneBoard} />
      </Switch>
    </BoardProvider>
  );
}

function OneBoard() {
  const { id } = useParams<{ id: string }>();
  const ready = useBoardState((b) => b.ready);
  const isThere = useBoardState((b) => b.programmes.some((programme) => programme.id === id));
  if (!ready) return null;
  if (!isThere) return <NotHere />;
  return (
    <Switch>
      <Route path="/board/:id" component={BoardPage} />
      <Route path="/board/:id/who/:person" component={PersonPage} />
      <Route path="/board/:id/words" component={WordsPage} />
      <Route path="/board/:id/next" component={NextPage} />
      <Route path="/board/:id/list" component={ListPage} />
      <Route path="/board/:id/keep" component={KeepPage} />
      <Route component={NotHere} />
    </Switch>
  );
}
