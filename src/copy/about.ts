export const about = {
  title: 'About Towpath',
  what: 'Towpath takes a mixed group from its first walk to a 5 km event. A leader writes the sessions; everyone hears them on their own phone and says how hard they were.',
  staysTitle: 'What stays on this phone',
  stays: [
    'The programmes, your group, every session with its effort, niggles, warning signs and notes: all in this browser’s own store.',
    'There is no account and no server behind Towpath. Nothing is sent unless you send it.',
    'It does not use your position, your contacts or your microphone.',
    'Clearing the browser’s data clears the record too.',
  ],
  oneTitle: 'One phone is one person',
  one: 'Towpath keeps one record. Two people who share a phone would mix theirs; each should use their own.',
  effortTitle: 'Effort, 0 to 10',
  effort:
    'A plain scale that goes by breath and talk. It is not a measured scale and not a share of the heart rate.',
  soundTitle: 'Why it is one long sound',
  sound:
    'A locked phone lets a sound that plays go on, and little else. So the whole session is put together as one sound before you start.',
  careTitle: 'Care',
  care: 'Towpath gives general guidance and knows nothing about your health. Doctors, physiotherapists, qualified coaches and local rules come first.',
  licence:
    'Free software under the MIT licence. The typeface is Atkinson Hyperlegible Next, under the SIL Open Font License 1.1.',
  version: 'Version',
} as const;
