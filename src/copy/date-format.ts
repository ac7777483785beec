/**
 * Writes moments (ms since 1970) as days and times in British English. The format is made when it
 * is first asked for: making the first one takes longer than all else that a page begins with.
 */
export function dateFormat(options: Intl.DateTimeFormatOptions): (at: number) => string {
  let format: Intl.DateTimeFormat | undefined;
  return (at) => {
    format ??= new Intl.DateTimeFormat('en-GB', options);
    return format.format(at);
  };
}
