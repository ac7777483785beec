import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { told } from './told.ts';

const FOLDER = new URL('../../fixtures/sessions/', import.meta.url);

describe('a session as a person would read it', () => {
  it.each(readdirSync(FOLDER))(
    'PLAY-2 goes as it is written in tests/fixtures/sessions/%s',
    (name) => {
      const fixture = readFileSync(new URL(name, FOLDER), 'utf8');
      const written = fixture.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
      expect(told(fixture)).toEqual(written);
    },
  );
});
