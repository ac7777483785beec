import { answerComplaint, hostileAnswer, makeAnswers } from './answers.ts';
import { hostileIntake, intakeComplaint } from './intake.ts';
import { lockedDecoder } from './locked.ts';
import { makeSeeds, mutated } from './mutate.ts';
import { pictureDecoder } from './pictures.ts';
import type { Random } from './random.ts';
import { complaint, createReceiver } from './receiver.ts';
import { backupDecoder, boardsDecoder, rowDecoder } from './records.ts';
import { journalDecoder, packDecoder, sheetDecoder, shorthandDecoder } from './written.ts';

/** A case that can be written to a file and looked at. */
export interface Written {
  readonly kind: string;
  readonly content: string | Uint8Array;
}

/** One way by which bytes or text from outside come in. */
export interface Decoder<T extends Written = Written> {
  readonly name: string;
  /** Of a thousand cases, how many: what takes long gets few. */
  readonly share: number;
  make(random: Random): T | Promise<T>;
  /** What is wrong with what the app made of it; nothing when all is as it must be. */
  look(item: T): string | undefined | Promise<string | undefined>;
  /** What must hold after all cases. */
  end?(): string | undefined;
}

/** Every decoder there is, with content of its own to damage. */
export async function makeDecoders(): Promise<readonly Decoder[]> {
  const seeds = makeSeeds();
  const receiver = createReceiver(seeds);
  const answers = await makeAnswers();
  const programme: Decoder<Written & { readonly item: ReturnType<typeof mutated> }> = {
    name: 'programme: link, parts, file',
    share: 100,
    make(random) {
      const item = mutated(seeds, random);
      return { kind: item.kind, content: 'text' in item ? item.text : item.file, item };
    },
    look: async ({ item }) => complaint(await receiver.give(item), seeds),
    end: () =>
      receiver.writes.length > 0 ? `${receiver.writes.length} programmes were stored` : undefined,
  };
  const answer: Decoder<Written & { readonly item: Awaited<ReturnType<typeof hostileAnswer>> }> = {
    name: 'answer',
    share: 20,
    async make(random) {
      const item = await hostileAnswer(answers, random);
      return { kind: item.kind, content: item.code, item };
    },
    look: ({ item }) => answerComplaint(answers, item),
  };
  const intake: Decoder<Written & { readonly item: ReturnType<typeof hostileIntake> }> = {
    name: 'chat, archive, record',
    share: 20,
    make(random) {
      const item = hostileIntake(answers, random);
      return { kind: item.kind, content: 'text' in item ? item.text : item.file, item };
    },
    look: ({ item }) => intakeComplaint(answers, item),
  };
  return [
    programme,
    answer,
    intake,
    backupDecoder(),
    boardsDecoder(answers),
    rowDecoder(answers),
    await lockedDecoder(),
    shorthandDecoder(seeds),
    sheetDecoder(seeds),
    packDecoder(),
    journalDecoder(),
    pictureDecoder(seeds),
  ];
}
