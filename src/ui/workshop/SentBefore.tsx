import { useEffect, useState } from 'react';
import { Link, useLocation, useParams } from 'wouter';
import type { Sending } from '../../app/exchange-contract.ts';
import { boards } from '../../copy/board-page.ts';
import { lead } from '../../copy/lead.ts';
import { shelf } from '../../copy/workshop.ts';
import { readProgramme } from '../../domain/programme/read.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { boardAt, boardsAt } from '../board/addresses.ts';
import { NotHere } from '../parts/NotHere.tsx';
import { SendSheet } from '../parts/SendSheet.tsx';
import { deskAt, sentAt, shelfAt } from './addresses.ts';
import { useWorkshopStore } from './workshop-context.tsx';

/** What went out from this phone can be shown again, exactly as it went, and written on. */
export function SentBefore() {
  const workshop = useWorkshopStore();
  const [, go] = useLocation();
  const sent = usePublishing((p) => p.sent);
  const all = Object.values(sent).flatMap((each) => {
    const read = readProgramme(each.text);
    return read.ok ? [{ ...each, title: read.value.title }] : [];
  });
  if (all.length === 0) return null;
  const writeOn = async (text: string) => {
    const made = await workshop.getState().createFromFile(text);
    if (made.ok) go(deskAt(made.value));
  };
  return (
    <section className="stack rule">
      <h2>{lead.sentTitle}</h2>
      <Link href={boardsAt} className="text-button">
        {boards.toBringIn}
      </Link>
      {all.map(({ id, title, revision, text }) => (
        <div key={id} className="stack tight">
          <p>{lead.sentLine(title, revision)}</p>
          <div className="row">
            <Link href={boardAt(id)} className="button">
              {boards.open(title)}
            </Link>
            <Link href={sentAt(id)} className="button">
              {lead.again(title)}
            </Link>
            <button type="button" className="text-button" onClick={() => void writeOn(text)}>
              {lead.writeOn(title)}
            </button>
          </div>
        </div>
      ))}
    </section>
  );
}

/** One of them, as it went out. */
export function SentAgain() {
  const { id = '' } = useParams();
  const store = useApp().publishing;
  const [sending, setSending] = useState<Sending | 'reading' | 'gone'>('reading');
  useEffect(() => {
    const read = async () => {
      await store.getState().load();
      const going = await store.getState().again(id);
      setSending(going.ok ? going.value : 'gone');
    };
    void read();
  }, [store, id]);
  if (sending === 'reading') return null;
  if (sending === 'gone') return <NotHere />;
  return <SendSheet sending={sending} back={{ href: shelfAt, name: shelf.title }} />;
}
