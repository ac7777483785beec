import { expect } from 'vitest';
import { bringIn } from '../../src/copy/bring-in.ts';
import { felt } from '../../src/copy/felt.ts';
import { groups } from '../../src/copy/groups.ts';
import { choiceSaid } from '../../src/copy/join.ts';
import { leaderKeys, sending } from '../../src/copy/lead.ts';
import { log } from '../../src/copy/log.ts';
import { records } from '../../src/copy/records.ts';
import { running } from '../../src/copy/running.ts';
import { tell } from '../../src/copy/tell.ts';
import { welcome } from '../../src/copy/welcome.ts';
import { desk, shelf } from '../../src/copy/workshop.ts';
import { eachEngine } from '../drivers/engines/each.ts';
import { keepFiles, lastFile } from '../drivers/engines/files.ts';
import { type Person, until } from '../drivers/engines/person.ts';
import { arrive, begin, startOn } from '../drivers/engines/visit.ts';
import { openAnswer } from '../drivers/exchange/open-answer.ts';

const PASSPHRASE = 'heron tide reed wind salt';

async function endSession(person: Person): Promise<void> {
  await person.press('button', running.more);
  await person.press('button', new RegExp(`^${running.end}`));
  await person.press('button', running.endYes);
  await person.see('heading', felt.title);
}

eachEngine('ENG-6 a backup taken in on a new phone brings the sessions along', async (visit) => {
  const old = await startOn(visit, '10 s easy walk; 30 s run; 10 s easy walk');
  await endSession(old.person);
  await keepFiles(old.person);
  await old.person.go('/records');
  await old.person.press('button', records.saveBackup);
  const backup = await lastFile(old.person);

  const next = await visit.other();
  await arrive(visit);
  await next.press('link', welcome.backup);
  await next.give(records.choose, visit.file('backup.json', backup));
  await next.see('heading', records.previewTitle);
  await next.press('button', records.take);
  await next.read(records.done);
  await next.go('/done');
  await next.read(log.entry(1, 1));
});

/** Makes keys and signs the example. @returns the backup of the keys, and the link */
async function publish(person: Person): Promise<{ keys: string; link: string }> {
  await keepFiles(person);
  await person.go('/lead');
  await person.press('button', shelf.example);
  await person.press('link', desk.send);
  await person.write(leaderKeys.passphrase, PASSPHRASE);
  await person.press('button', leaderKeys.make);
  const keys = await until('keys', () => lastFile(person), 60_000);
  await person.press('button', sending.publish);
  const field = await person.see('field', sending.linkTitle);
  const link = await person.tab.run(
    (css) => document.querySelector<HTMLInputElement>(css)?.value ?? '',
    field,
  );
  return { keys, link };
}

eachEngine(
  'ENG-5 a programme is joined by its link, and a sealed answer opens for its leader alone',
  async (visit) => {
    await arrive(visit);
    const { person } = visit;
    const { keys, link } = await publish(person);
    await person.tab.goto('about:blank');
    await person.tab.goto(link);
    await person.press('button', choiceSaid('keep', 'new', 1).name);
    await person.press('button', groups.choose('Wren'));
    const id = await until('the programme', () =>
      person.tab.run(() => /#\/p\/([^/]+)$/.exec(location.href)?.[1]),
    );
    await begin(visit, id);
    await endSession(person);

    await keepFiles(person);
    await person.go(`/tell/${id}`);
    await person.read(tell.sealed('Imogen'));
    await person.press('button', tell.look);
    await person.see('heading', tell.reviewTitle);
    await person.press('button', tell.file);
    const answer = /\S*#\/answer\/\S+/.exec(await lastFile(person))?.[0] ?? '';
    expect(await openAnswer(answer, keys, PASSPHRASE)).toMatchObject({ group: 'wren' });

    await person.tab.goto('about:blank');
    await person.tab.goto(answer);
    await person.read(bringIn.takenLine(1, 1, 1));

    const stranger = await visit.other();
    await stranger.tab.goto(answer);
    await stranger.read(bringIn.forLeader.title);
  },
);
