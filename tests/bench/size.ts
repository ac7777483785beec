import { basename } from 'node:path';
import { allFiles, bytesOf, compressed, firstLoad, laterLoad } from '../drivers/built.ts';
import { kilobytes, type Table } from './table.ts';

/** What a first visit loads before the first screen, and what comes after. */
export function sizes(): Table {
  const first = firstLoad();
  const row = (when: string, file: string): readonly string[] => [
    when,
    basename(file).replace(/-[\w-]{8}(?=\.)/, ''),
    kilobytes(bytesOf(file)),
    kilobytes(compressed(file)),
  ];
  const rest = allFiles().filter(
    (file) => /\.(mp3|woff2)$/.test(file) || /^assets\/.*\.json$/.test(file) || file === 'sw.js',
  );
  const sum = first.reduce((total, file) => total + compressed(file), 0);
  return {
    title: 'Size by part',
    how: 'Bytes of the build, and as received (gzip). Budgets: first load 110 kB, voice pack 1 MB.',
    head: ['When', 'Part', 'Bytes', 'As received'],
    rows: [
      ...first.map((file) => row('first load', file)),
      ['first load', 'all', '', kilobytes(sum)],
      ...laterLoad().map((file) => row('when needed', file)),
      ...rest.map((file) => row('kept on the phone', file)),
    ],
  };
}
