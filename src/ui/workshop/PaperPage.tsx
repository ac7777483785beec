import { useEffect, useState } from 'react';
import { useParams } from 'wouter';
import type { Sending } from '../../app/exchange-contract.ts';
import { desk } from '../../copy/workshop.ts';
import { useApp } from '../app-context.tsx';
import { deskAt } from './addresses.ts';
import { Paper } from './Paper.tsx';
import { useChangeLine, useSent } from './use-sent.ts';
import { useSheet } from './workshop-context.tsx';

/** The open sheet on paper. Its code is on the page while it is what was sent. */
export function PaperPage() {
  const { key = '' } = useParams();
  const open = useSheet(key);
  const publishing = useApp().publishing;
  const sent = useSent(open?.sheet);
  const isAsSent = useChangeLine(open?.sheet) === '' && sent !== undefined;
  const id = open?.sheet.id;
  const [sending, setSending] = useState<Sending>();
  useEffect(() => {
    if (id === undefined || !isAsSent) return setSending(undefined);
    let isWanted = true;
    void publishing
      .getState()
      .again(id)
      .then((going) => isWanted && setSending(going.ok ? going.value : undefined));
    return () => {
      isWanted = false;
    };
  }, [publishing, id, isAsSent]);
  if (open === undefined) return null;
  const { outline, sheet } = open;
  return (
    <Paper
      outline={outline}
      title={sheet.title.trim() || desk.untitled}
      leader={sheet.leader}
      sending={sending}
      back={{ href: deskAt(key), name: desk.back }}
    />
  );
}
