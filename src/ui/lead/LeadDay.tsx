import { useState } from 'react';
import { Link, Redirect, useParams } from 'wouter';
import type { LedBefore } from '../../app/session-contract.ts';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { common } from '../../copy/common.ts';
import { leadCare, leadDay as words } from '../../copy/lead-day.ts';
import { choiceAgain, firstChoice, type LeadChoice } from '../../domain/lead/choose.ts';
import { useApp, useSession, useSettings } from '../app-context.tsx';
import { boardPageAt } from '../board/addresses.ts';
import { useDateAt } from '../parts/date-at.ts';
import { mediumOf } from '../parts/next-step.ts';
import { Screen } from '../parts/Screen.tsx';
import { isUnderWay } from '../parts/session-state.ts';
import { deskAt, leadingAt } from '../workshop/addresses.ts';
import { useSent } from '../workshop/use-sent.ts';
import { useSheet } from '../workshop/workshop-context.tsx';
import { ChooseGroups } from './ChooseGroups.tsx';
import { ChooseSession } from './ChooseSession.tsx';
import { CutOff, useCutOff } from './CutOff.tsx';
import { Ends } from './Ends.tsx';
import { LeadFoot } from './LeadFoot.tsx';
import { SoundFields } from './SoundFields.tsx';
import { useLed } from './use-led.ts';

/** Before the groups start: which session, who is here, from when, and how each is told. */
export function LeadDay() {
  const { key } = useParams<{ key: string }>();
  const open = useSheet(key);
  const state = useSession((s) => s.view.state);
  const led = useSession((s) => s.view.lead?.key);
  const ofOwn = useSession((s) => s.view.purpose === 'session');
  const before = useSession((s) => s.ledBefore);
  const cutOff = useCutOff(open, before);
  if (open === undefined) return null;
  if (led !== undefined && isUnderWay(state)) return <Redirect to={leadingAt(led)} replace />;
  if (ofOwn && isUnderWay(state)) return <OwnUnderWay open={open} />;
  if (cutOff !== undefined) return <CutOff open={open} {...cutOff} />;
  return <Choosing open={open} before={before?.key === key ? before : undefined} />;
}

const frame = ({ key, sheet }: OpenSheet) => ({
  title: words.title,
  sub: sheet.title,
  back: { href: deskAt(key), name: words.back },
});

function OwnUnderWay({ open }: { open: OpenSheet }) {
  return (
    <Screen {...frame(open)}>
      <p>{words.ownUnderWay}</p>
      <div>
        <Link href="/run" className="button primary">
          {common.underWay.go}
        </Link>
      </div>
    </Screen>
  );
}

function Choosing({ open, before }: { open: OpenSheet; before: LedBefore | undefined }) {
  const today = useDateAt()(useApp().clock.now());
  const { outline } = open;
  const [edited, setEdited] = useState<LeadChoice>();
  const first = () =>
    before === undefined ? firstChoice(outline, today) : choiceAgain(outline, today, before.choice);
  const choice = edited ?? first();
  const watches = useSettings((s) => mediumOf(s) === 'screen');
  const [silent, setSilent] = useState(watches);
  const ready = useLed(open, choice, silent ? 'screen' : 'sound');
  const fields = { outline, choice, onChange: setEdited };
  return (
    <Screen
      {...frame(open)}
      foot={<LeadFoot ready={ready} silent={silent} onSilent={() => setSilent(true)} />}
    >
      <ChooseSession {...fields} />
      <ChooseGroups {...fields} />
      {ready.led !== undefined && <Ends plan={ready.led.plan} />}
      <SoundFields {...fields} silent={silent} onSilent={setSilent} />
      <Care />
      <AttendanceList open={open} />
    </Screen>
  );
}

/** Said before Start, every time. */
function Care() {
  return (
    <section className="stack rule">
      <h2>{leadCare.title}</h2>
      <ul className="bullets">
        {leadCare.points.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
      <p className="small">{leadCare.rules}</p>
    </section>
  );
}

/** Only what was sent has people who may come. */
function AttendanceList({ open }: { open: OpenSheet }) {
  const sent = useSent(open.sheet);
  if (sent === undefined) return null;
  return (
    <section className="stack tight">
      <p>{words.listFirst}</p>
      <div>
        <Link href={boardPageAt(open.sheet.id, 'list')} className="button">
          {words.list}
        </Link>
      </div>
    </section>
  );
}
