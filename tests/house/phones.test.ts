import { describe, expect, it } from 'vitest';
import { projectFiles, read } from '../drivers/tree.ts';

/** What stands in quotes there and is not the app's to say: the form's, the answers', the record's. */
const NOT_OURS = ['Opened from', 'not tried', 'yes', 'heardToEnd'];

describe('the test by hand for a phone', () => {
  it('ENG-8 names every control and every sentence as the app does', () => {
    const page = read('docs/phones.md').replace(/```[\s\S]*?```/g, '');
    const said = projectFiles()
      .filter((path) => path.startsWith('src/copy/'))
      .map(read)
      .join('\n');
    const quoted = [...page.matchAll(/"([^"]+)"/g)].map(([, words = '']) => words);
    const named = quoted.filter((words) => !NOT_OURS.includes(words));
    expect(named.length).toBeGreaterThan(8);
    expect(named.filter((words) => !said.includes(words))).toEqual([]);
  });
});
