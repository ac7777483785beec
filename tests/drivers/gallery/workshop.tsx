/** Pages of the workshop on their own, with made-up data: `?state=paper`. */
import type { ReactElement } from 'react';
import type { Sending } from '../../../src/app/exchange-contract.ts';
import { CODE_BYTES } from '../../../src/app/exchange-sending.ts';
import { outgoingText } from '../../../src/domain/exchange/compose.ts';
import { fewestLinks, joinLink } from '../../../src/domain/exchange/link.ts';
import { encodePacket } from '../../../src/domain/exchange/packet.ts';
import { toUtf8 } from '../../../src/domain/exchange/utf8.ts';
import type { Programme } from '../../../src/domain/programme/programme.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { drawCode } from '../../../src/platform/codes/draw.ts';
import { Hear } from '../../../src/ui/workshop/Hear.tsx';
import { Paper } from '../../../src/ui/workshop/Paper.tsx';
import { marshProgramme } from '../exchange/programmes.ts';
import { DEMO } from '../fake-app.ts';

const BASE = 'https://club.example/towpath/';

/** What a programme goes out as. @param long bytes that make the code longer than it is */
function sendingOf(programme: Programme, long = 0): Sending {
  const bytes = toUtf8(outgoingText(programme.text, { revision: 2 }));
  let noise = 1;
  const signs = Array.from({ length: long }, () => {
    noise = (noise * 48_271) % 2_147_483_647;
    return noise.toString(36).slice(-1);
  });
  const code = `${encodePacket({ bytes })}${signs.join('')}`;
  const codes = (fewestLinks(BASE, code, CODE_BYTES) ?? []).flatMap((link) => drawCode(link) ?? []);
  return {
    programmeId: programme.id,
    title: programme.title,
    revision: 2,
    signed: false,
    link: joinLink(BASE, code),
    linkIsLocal: false,
    text: '',
    fileName: '',
    codes,
    message: '',
  };
}

/** Eight groups: those of the marsh twice, the second four with two sessions in every week. */
function crowded(): Programme {
  const four = marshProgramme(12) as unknown as {
    groups: { id: string; name: string; for: string }[];
    weeks: { sessions: Record<string, string | string[]> }[];
  };
  const names = ['Redshank', 'Avocet', 'Lapwing', 'Oystercatcher'];
  const more = four.groups.map(({ id, for: whom }, n) => ({
    id: `${id}-2`,
    name: names[n] ?? id,
    for: whom,
  }));
  const weeks = four.weeks.map((week) => ({
    ...week,
    sessions: {
      ...week.sessions,
      ...Object.fromEntries(
        four.groups.map(({ id }) => {
          const given = week.sessions[id] ?? '';
          const [first = '', second = first] = typeof given === 'string' ? [given] : given;
          return [`${id}-2`, [first, second]];
        }),
      ),
    },
  }));
  const text = JSON.stringify({ ...four, groups: [...four.groups, ...more], weeks });
  const read = readProgramme(text);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

function heard(): ReactElement {
  const week = DEMO.weeks[1];
  const plan = week?.sessions.curlew?.[0]?.plan;
  if (week === undefined || plan === undefined) throw new Error('no such session in the demo');
  return (
    <Hear
      source={{
        title: 'Week 2, session 1',
        groupName: 'Curlew',
        plan,
        reminders: DEMO.reminders,
        target: week.effort,
        fileName: 'heron-loop-w2-curlew-1',
      }}
      back={{ href: '/lead', name: 'Back' }}
    />
  );
}

const paper = (programme: Programme, sending?: Sending, startDate = programme.startDate) => (
  <Paper
    outline={{
      groups: programme.groups,
      weeks: programme.weeks,
      goal: programme.goal,
      ...(startDate === undefined || startDate === '' ? {} : { startDate }),
    }}
    title={programme.title}
    leader={programme.leader.name}
    sending={sending}
    back={{ href: '/lead', name: 'Back' }}
  />
);

export const PIECES: Readonly<Record<string, () => ReactElement>> = {
  hear: heard,
  paper: () => paper(DEMO, sendingOf(DEMO)),
  'paper-plain': () => paper(DEMO, undefined, ''),
  'paper-eight': () => paper(crowded(), sendingOf(crowded())),
  'paper-four-codes': () => paper(crowded(), sendingOf(crowded(), 900)),
};
