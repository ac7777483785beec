/** The format of the log as JSON. */
export const LOG_EXPORT_FORMAT = 'towpath-log-export/1';

/**
 * The log as JSON for other programs: every entry exactly as it is kept, those of a newer version
 * too, in the order in which they are given. Without a byte order mark (RFC 8259, section 8.1).
 *
 * @param at UTC milliseconds at which it is made
 */
export const logExport = (entries: readonly unknown[], at: number): string =>
  [
    '{',
    `"format": ${JSON.stringify(LOG_EXPORT_FORMAT)},`,
    `"madeAt": ${at},`,
    `"entries": [\n${entries.map((entry) => JSON.stringify(entry)).join(',\n')}\n]`,
    '}',
    '',
  ].join('\n');
