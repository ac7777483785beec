/** As short as a programme can be: properties read hundreds of them. */
export const programmeText = (id: string, revision: number, more: object = {}): string =>
  JSON.stringify({
    format: 'towpath-programme/1',
    id,
    revision,
    title: 'A week on the marsh',
    language: 'en',
    goal: { name: 'Heron Loop', distanceM: 5000 },
    groups: [{ id: 'wren', name: 'Wren', for: '' }],
    weeks: [
      {
        focus: '',
        effort: 50,
        timesPerWeek: { min: 2, max: 3 },
        sessions: { wren: '9 min walk' },
      },
    ],
    reminders: [],
    ...more,
  });
