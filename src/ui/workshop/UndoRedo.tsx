import { desk as words } from '../../copy/workshop.ts';
import { useWorkshop } from './workshop-context.tsx';

/** The way back from the last change, wherever a programme is written. */
export function Undo() {
  const can = useWorkshop(({ open }) => open?.canUndo === true);
  const undo = useWorkshop((state) => state.undo);
  return (
    <button type="button" className="button" disabled={!can} onClick={undo}>
      {words.undo}
    </button>
  );
}

/** Forward again. */
export function Redo() {
  const can = useWorkshop(({ open }) => open?.canRedo === true);
  const redo = useWorkshop((state) => state.redo);
  return (
    <button type="button" className="button" disabled={!can} onClick={redo}>
      {words.redo}
    </button>
  );
}
