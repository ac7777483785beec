/** `npm run bench`: every figure of the README's tables, measured on this machine in one run. */
import { cpus } from 'node:os';
import { openingBoard } from './board.ts';
import { coldStart } from './cold-start.ts';
import { composing } from './compose.ts';
import { drafting } from './draft.ts';
import { sending } from './exchange.ts';
import { growing } from './growth.ts';
import { bringingIn } from './intake.ts';
import { longLog } from './long-log.ts';
import { lookingBack } from './look-back.ts';
import { keeping } from './records.ts';
import { reviewing } from './review.ts';
import { runningScreen } from './running-screen.ts';
import { sizes } from './size.ts';
import { asText, type Table } from './table.ts';
import { typing } from './typing.ts';

const parts: readonly (() => Table | readonly Table[] | Promise<Table>)[] = [
  sizes,
  composing,
  coldStart,
  runningScreen,
  sending,
  reviewing,
  typing,
  drafting,
  lookingBack,
  keeping,
  growing,
  openingBoard,
  longLog,
  bringingIn,
];

console.log(
  `Node ${process.versions.node}, ${cpus().length} x ${cpus()[0]?.model ?? 'processor'}\n`,
);
for (const part of parts) for (const table of [await part()].flat()) console.log(asText(table));
