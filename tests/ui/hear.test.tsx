import { act, render, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { before } from '../../src/copy/before.ts';
import { hear } from '../../src/copy/hear.ts';
import { settings } from '../../src/copy/settings.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { FRAME_BYTES } from '../../src/domain/track/frame.ts';
import type { VoiceManifest } from '../../src/domain/track/pack.ts';
import { AppProvider } from '../../src/ui/app-context.tsx';
import { Hear, type HearSource } from '../../src/ui/workshop/Hear.tsx';
import manifest from '../../src/voice/pack/manifest.json';
import { DEMO, type FakeOptions, fakeApp, viewAt } from '../drivers/fake-app.ts';
import { askedFor, here, show, user } from './show.tsx';

const plan = parsePlan(
  '5 min easy walk; 2 x (1 min walk "over the footbridge", 2 min run); 5 min easy walk',
);
if (!plan.ok) throw new Error(plan.error.code);
const SOURCE: HearSource = {
  title: 'Week 1, session 1',
  groupName: 'Curlew',
  plan: plan.value,
  reminders: ['stand-tall'],
  target: 50,
  fileName: 'heron-loop-w1-curlew-1',
};
/** The lengths of the voice that is shipped, and nothing to be heard. */
const voice = {
  manifest: manifest as unknown as VoiceManifest,
  audio: new Uint8Array(manifest.frames * FRAME_BYTES),
};

/** A media element of this page does what a browser's does, and keeps count. */
const sound = { plays: 0, pauses: 0, refuses: false };
beforeEach(() => {
  Object.assign(sound, { plays: 0, pauses: 0, refuses: false });
  vi.spyOn(HTMLMediaElement.prototype, 'play').mockImplementation(async function (
    this: HTMLMediaElement,
  ) {
    sound.plays += 1;
    if (sound.refuses) throw new Error('not allowed');
    this.dispatchEvent(new Event('play'));
  });
  vi.spyOn(HTMLMediaElement.prototype, 'pause').mockImplementation(function (
    this: HTMLMediaElement,
  ) {
    sound.pauses += 1;
    this.dispatchEvent(new Event('pause'));
  });
});
afterEach(() => vi.restoreAllMocks());

function open(options: FakeOptions = {}) {
  const app = fakeApp({ voice, ...options });
  const page = render(
    <AppProvider app={app}>
      <Router hook={useHashLocation}>
        <Hear source={SOURCE} back={{ href: '/lead/one', name: 'Back' }} />
      </Router>
    </AppProvider>,
  );
  return { app, page };
}

const button = (name: string) => screen.findByRole('button', { name });
const line = (text: RegExp) => screen.findByRole('button', { name: text });
const current = () => document.querySelector('[aria-current="true"]')?.textContent ?? '';
const element = () => document.querySelector('audio') as HTMLAudioElement;
const moveTo = (seconds: number) =>
  act(() => {
    element().currentTime = seconds;
    element().dispatchEvent(new Event('timeupdate'));
  });

describe('hear it', () => {
  it('HEAR-5 all that is said stands there with its time in the session, notes as shown and not spoken', async () => {
    open();
    const run = await line(/^6:00.*Run\. Two minutes/);
    // 5 + 2 x 3 + 5 min: the end, worked by hand.
    expect(await line(/^16:00/)).toBeDefined();
    const bridge = await screen.findAllByText(hear.note('over the footbridge'));
    expect(bridge).toHaveLength(2);
    expect(within(run).queryByText(/footbridge/)).toBeNull();
  });

  it('HEAR-6 nothing is played before a tap; then the line that sounds is marked, and stays so without the focus', async () => {
    open();
    await line(/^6:00/);
    expect(sound.plays).toBe(0);
    expect(current()).toMatch(/^0:00/);
    const play = await button(hear.play);
    await user.click(play);
    expect(sound.plays).toBe(1);
    expect(await button(hear.pause)).toBe(document.activeElement);
    const scroll = vi.spyOn(Element.prototype, 'scrollIntoView');
    moveTo(30);
    expect(current()).not.toMatch(/^0:00/);
    expect(scroll).toHaveBeenCalledTimes(1);
    expect(await button(hear.pause)).toBe(document.activeElement);
    await user.click(await button(hear.pause));
    expect(sound.pauses).toBe(1);
    expect(await button(hear.play)).toBeDefined();
  });

  it('HEAR-6 a line that is tapped is heard from its countdown on; previous and next step through the lines', async () => {
    open();
    await user.click(await line(/^6:00/));
    expect(sound.plays).toBe(1);
    expect(current()).toMatch(/^6:00/);
    const there = element().currentTime;
    expect(there).toBeGreaterThan(10);
    await user.click(await button(hear.next));
    expect(element().currentTime).toBeGreaterThan(there);
    expect(current()).not.toMatch(/^6:00/);
    await user.click(await button(hear.previous));
    expect(element().currentTime).toBe(there);
    expect(sound.plays).toBe(3);
  });

  it('HEAR-3 the marker on the strip stands where in the session the sound is', async () => {
    open();
    await user.click(await line(/^8:00/));
    const marker = document.querySelector('.marker') as HTMLElement;
    // The countdown to the boundary at 8 of 16 min begins 3 s before it.
    const share = (8 * 60 - 3) / (16 * 60);
    expect(Number.parseFloat(marker.style.left)).toBeCloseTo(share * 100, 1);
  });

  it('HEAR-6 with more or fewer words it is at the same place of the session, and silent', async () => {
    const { app } = open();
    await user.click(await line(/^8:00/));
    const many = document.querySelectorAll('.hear-line').length;
    await user.click(screen.getByLabelText(settings.talks.few[0]));
    await vi.waitFor(() =>
      expect(document.querySelectorAll('.hear-line').length).toBeLessThan(many),
    );
    expect(current()).toMatch(/^8:00/);
    expect(await button(hear.play)).toBeDefined();
    expect(app.settings.getState().settings.talk).toBe('usual');
    expect(askedFor(app, 'hear').map(([, talk]) => talk)).toEqual(['usual', 'few']);
  });

  it('HEAR-7 without a voice it says why, and the words are there', async () => {
    const { app } = open({ voice: undefined, pack: { name: 'damaged' } });
    expect(await screen.findByText(hear.damaged)).toBeDefined();
    await user.click(await line(/^6:00/));
    expect(current()).toMatch(/^6:00/);
    expect(screen.queryByRole('button', { name: hear.play })).toBeNull();
    expect(sound.plays).toBe(0);
    expect(await screen.findByText(before.saveNeedsVoice)).toBeDefined();
    await user.click(await button(before.retry));
    expect(askedFor(app, 'retry')).toHaveLength(1);
  });

  it('HEAR-7 what could not be fetched, or would not play, is said and can be tried again', async () => {
    let tries = 0;
    const made = fakeApp({ voice }).exporter;
    open({
      exporter: {
        hear: async (...asked) => {
          tries += 1;
          if (tries === 1) throw new Error('offline');
          return made.hear(...asked);
        },
      },
    });
    expect(await screen.findByText(hear.notFetched)).toBeDefined();
    await user.click(await button(before.tryAgain));
    await line(/^6:00/);
    expect(screen.queryByText(hear.notFetched)).toBeNull();
    sound.refuses = true;
    await user.click(await button(hear.play));
    expect(await screen.findByText(hear.refused)).toBeDefined();
    sound.refuses = false;
    await user.click(await button(hear.play));
    expect(screen.queryByText(hear.refused)).toBeNull();
  });

  it('HEAR-8 while a session is under way nothing is offered, and what was heard stops when one begins', async () => {
    const { app } = open();
    await user.click(await line(/^6:00/));
    const view = viewAt({ programmeId: '', groupId: 'wren', week: 1, session: 1 }, 1000);
    act(() => app.session.setState({ view }));
    expect(await screen.findByText(hear.underWay)).toBeDefined();
    expect(sound.pauses).toBe(1);
    expect(document.querySelector('audio')).toBeNull();
    expect(screen.queryByRole('button', { name: hear.play })).toBeNull();
    expect(askedFor(app, 'close')).toEqual([]);
  });

  it('HEAR-8 a session that only waits to be started is let go of: a headset’s button is not to start it', async () => {
    const view = viewAt({ programmeId: '', groupId: 'wren', week: 1, session: 1 }, 0);
    const { app } = open({ view: { ...view, state: 'ready' } });
    await line(/^6:00/);
    expect(askedFor(app, 'close')).toHaveLength(1);
  });

  it('HEAR-9 the whole session is saved as sound and as words, with the words that were chosen', async () => {
    const { app } = open();
    await user.click(await screen.findByLabelText(settings.talks.many[0]));
    await user.click(await button(hear.saveMp3));
    await user.click(await button(hear.saveVtt));
    const saved = askedFor(app, 'save').map(([piece, talk, what]) => [
      (piece as { fileName: string }).fileName,
      talk,
      what,
    ]);
    expect(saved).toEqual([
      [SOURCE.fileName, 'many', 'mp3'],
      [SOURCE.fileName, 'many', 'vtt'],
    ]);
  });

  it('HEAR-8 leaving the page ends the sound', async () => {
    const { page } = open();
    await user.click(await button(hear.play));
    page.unmount();
    expect(sound.pauses).toBe(1);
  });
});

describe('before doing it', () => {
  const page = `/p/${DEMO.id}/2/1`;
  const chosen = { [DEMO.id]: 'curlew' };
  const settings = { cautionsReadOn: '2027-03-01', pocketCheckSkipped: true };

  it('HEAR-10 a session is heard from its own page, with its group, and the way leads back to it', async () => {
    const app = show(page, { chosen, settings, voice });
    await user.click(await screen.findByRole('link', { name: before.hearFirst }));
    expect(here()).toBe(`${page}/hear`);
    expect(await screen.findByRole('button', { name: hear.play })).toBeDefined();
    expect(screen.getByRole('heading', { level: 1, name: 'Week 2, session 1' })).toBeDefined();
    expect(screen.getByText(/^Curlew, /)).toBeDefined();
    const [piece] = askedFor(app, 'hear').at(-1) as [{ target: number; reminders: unknown }];
    expect(piece.target).toBe(DEMO.weeks[1]?.effort);
    expect(piece.reminders).toEqual(DEMO.reminders);
    // The session that stood ready must not begin by a headset's button.
    expect(askedFor(app, 'close')).toHaveLength(1);
    await user.click(screen.getByRole('link', { name: /Week 2, session 1$/ }));
    expect(here()).toBe(page);
    expect(await screen.findByRole('button', { name: before.start })).toBeDefined();
  });

  it('HEAR-10 without a group, or where there is no such session, the page says so', async () => {
    show(`${page}/hear`);
    expect(await screen.findByRole('link', { name: 'To the start' })).toBeDefined();
  });

  it('HEAR-10 a session that is not in the programme is not made up', async () => {
    show(`/p/${DEMO.id}/9/1/hear`, { chosen });
    expect(await screen.findByRole('link', { name: 'To the start' })).toBeDefined();
  });
});
