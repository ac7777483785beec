import { desk as words } from '../../copy/workshop.ts';
import { useWorkshop } from './workshop-context.tsx';

/** The way back from every change and forward again, wherever a programme is written. */
export function UndoRedo() {
  const canUndo = useWorkshop(({ open }) => open?.canUndo === true);
  const canRedo = useWorkshop(({ open }) => open?.canRedo === true);
  const undo = useWorkshop((state) => state.undo);
  const redo = useWorkshop((state) => state.redo);
  return (
    <>
      <button type="button" className="button" disabled={!canUndo} onClick={undo}>
        {words.undo}
      </button>
      <button type="button" className="button" disabled={!canRedo} onClick={redo}>
        {words.redo}
      </button>
    </>
  );
}
