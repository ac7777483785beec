import { describe, expect, it } from 'vitest';
import { entryOf } from '../../../src/domain/log/entry-of.ts';
import { replay } from '../../../src/domain/session/journal.ts';
import { Phone } from '../../drivers/player.ts';
import { EASY_DAY, scoreOf } from '../../drivers/sessions.ts';

const phone = () => new Phone(scoreOf(EASY_DAY));

describe('a session from start to end', () => {
  it('PLAY-1 ends at its total, with every second of the plan done once', () => {
    const p = phone().start().pass(389);
    expect(p.session.name).toBe('running');
    p.pass(2);
    expect(p.session.name).toBe('finished');
    const entry = entryOf(p.session);
    expect(entry).toMatchObject({ outcome: 'finished', doneSeconds: 390, activeSeconds: 390 });
    expect(entry.covered).toEqual([[0, 390]]);
  });

  it('JRNL-1 the journal read back gives the same entry', () => {
    const p = phone().start().pass(100).say('hold').pass(40).say('go-on').pass(400);
    expect(p.session.name).toBe('finished');
    expect(entryOf(replay(p.journal) ?? p.session)).toEqual(entryOf(p.session));
    expect(entryOf(p.session)).toMatchObject({ doneSeconds: 390, activeSeconds: 393 });
  });
});
