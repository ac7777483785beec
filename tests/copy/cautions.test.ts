import { describe, expect, it } from 'vitest';
import { cautions, HELP, STOP_SIGNS } from '../../src/copy/cautions.ts';

/*
 * What published lists name, in key words, against our own sentences. Stop signs: the union of
 * patient pages of Allina Health, Geisinger and Cedars-Sinai. Who asks first: Riebe D et al. 2015,
 * Med Sci Sports Exerc 47(11):2473-9. Heat: Armstrong LE et al. 2007, Med Sci Sports Exerc
 * 39(3):556-72.
 */
const pointsOf = (id: string): string =>
  cautions.sections.find((section) => section.id === id)?.points.join(' ') ?? '';

const PUBLISHED: readonly (readonly [list: string, said: string, signs: readonly RegExp[]])[] = [
  [
    'stop signs',
    STOP_SIGNS.join(' '),
    [
      /pressure/i,
      /tightness/i,
      /pain/i,
      /chest/,
      /neck/,
      /jaw/,
      /arm/,
      /shoulder blades/,
      /faint/i,
      /dizzy/,
      /breathless out of proportion/i,
      /too breathless to speak/,
      /not settle/,
      /heartbeat/,
      /pounds/,
      /races/,
      /stumbles/,
      /cold sweat/i,
      /feeling sick/,
      /weakness/,
      /numbness/,
      /confusion/,
      /speaking/,
      /seeing/,
    ],
  ],
  [
    'what to do then',
    HELP.join(' '),
    [/^Stop/, /few minutes of rest/, /emergency number/, /doctor before the next/],
  ],
  [
    'who asks first: disease, signs, and a hard start without the habit',
    pointsOf('ask-first'),
    [
      /heart/,
      /blood vessels/,
      /kidneys/,
      /blood sugar/,
      /stop signs/,
      /hardly moved for months/,
      /go hard/,
    ],
  ],
  [
    'heat',
    pointsOf('weather'),
    [
      /headache/i,
      /cramps/,
      /sick/,
      /giddy/,
      /shade/,
      /water on the skin/,
      /confusion/i,
      /staggering/,
      /collapse/,
      /cool the person at once/,
      /call/,
    ],
  ],
  [
    'pain of joint and bone',
    pointsOf('pain'),
    [/sharp/, /joint/, /bone/, /growing/, /stop running/i, /walk home/, /leader/],
  ],
];

describe('the cautions', () => {
  it.each(PUBLISHED)('UI-50 have all that the published lists name: %s', (_, said, signs) => {
    expect(signs.filter((sign) => !sign.test(said))).toEqual([]);
  });

  it('UI-50 defer to local numbers, rules and licensed practice, and say of nobody that they are fit', () => {
    const all = JSON.stringify(cautions);
    expect(all).toMatch(/local emergency number/);
    expect(all).toMatch(/not medical advice/);
    expect(all).toMatch(/doctor, physiotherapist or qualified coach/);
    expect(all).not.toMatch(/you are (fit|healthy|safe|cleared)/i);
  });
});
