import { useLocation, useParams } from 'wouter';
import { deskAt, pageAt } from './addresses.ts';
import { DraftForm } from './DraftForm.tsx';
import { useEdit, useSheet } from './workshop-context.tsx';

/** A draft for the open sheet; taking it over is one edit, so that undo brings everything back. */
export function DraftPage() {
  const { key = '' } = useParams();
  const [, go] = useLocation();
  const open = useSheet(key);
  const edit = useEdit();
  if (open === undefined) return null;
  return (
    <DraftForm
      sheet={open.sheet}
      here={pageAt(key, 'draft')}
      home={deskAt(key)}
      onTake={(sheet) => {
        edit({ kind: 'replace', sheet });
        go(deskAt(key));
      }}
    />
  );
}
