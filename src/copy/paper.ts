/** For the printed programme: one page a week. */

export const paper = {
  title: (programme: string): string => `${programme} on paper`,
  sub: 'One A4 page a week, in black on white.',
  what: 'What to print',
  whole: (weeks: number): string => (weeks === 1 ? 'The one week' : `All ${weeks} weeks`),
  one: (week: number, focus: string): string => `Week ${week}: ${focus}`,
  print: 'Print',
  help: 'The preview is the page itself, made smaller. To keep it as a file, choose “Save as PDF” where you choose the printer.',
  noSending: 'Send the programme first to have its code on the page.',
  noCode: 'It is too long for a code, so the page has none.',
  nothing: 'No week can be printed yet: nothing in it can be read.',
  from: (title: string, leader: string): string =>
    leader === '' ? title : `${title}, with ${leader}`,
  week: (n: number, of: number): string => `Week ${n} of ${of}`,
  dates: (monday: string, sunday: string): string => `${monday} to ${sunday}`,
  effort: (words: string): string => `How hard: ${words}.`,
  session: (n: number): string => `Session ${n}. `,
  noPlan: 'No session this week.',
  goalNow: (name: string, km: string, date: string): string => `This week: ${name}, ${km}, ${date}`,
  key: 'Length is time, height is effort.',
  /** By how they are drawn in the strip. */
  textures: {
    still: 'stand, stretch',
    walk: 'walk',
    brisk: 'brisk walk',
    jog: 'jog',
    run: 'run',
  },
  scan: 'All of it on your phone: in Towpath, “Open a link, a code or a message”.',
  part: (n: number, of: number): string => (of === 1 ? '' : `Part ${n} of ${of}`),
  revision: (n: number): string => `Revision ${n}`,
  host: (place: string): string => `Towpath is at ${place}`,
  code: (title: string, n: number, of: number): string =>
    of === 1 ? `Code of ${title}` : `Code of ${title}, part ${n} of ${of}`,
} as const;
