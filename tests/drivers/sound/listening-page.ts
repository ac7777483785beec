import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { newProfile, openBrowser } from '../browser/browser.ts';
import { RATE } from './decode.ts';

/** What a page does with a track, as functions that it keeps on its window. */
interface Listening {
  load(): Promise<number>;
  listen(from: number, seconds: number): Promise<{ at: number; samples: string }>;
}

export interface ListeningPage {
  /** Seconds that the browser says the track lasts. */
  readonly duration: number;
  /** The place after a seek, and what is heard from there on. */
  listen(fromMs: number, seconds: number): Promise<{ atMs: number; samples: Float32Array }>;
  close(): Promise<void>;
}

/** Plays a track in a real browser, from a Blob as the app does, and records what it plays. */
export async function openListeningPage(track: Uint8Array): Promise<ListeningPage> {
  const server = createServer((request, response) => {
    const isTrack = request.url === '/track';
    response.setHeader('content-type', isTrack ? 'application/octet-stream' : 'text/html');
    response.end(isTrack ? track : '<!doctype html><title>listening</title>');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const profile = newProfile();
  const browser = await openBrowser(profile, ['--autoplay-policy=no-user-gesture-required']);
  const page = await browser.tab();
  await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  await prepare(page);
  return {
    duration: await page.evaluate(() => (window as unknown as Listening).load()),
    async listen(fromMs, seconds) {
      const heard = await page.evaluate(
        ([from, length]) => (window as unknown as Listening).listen(from, length),
        [fromMs / 1000, seconds] as const,
      );
      const raw = Buffer.from(heard.samples, 'base64');
      const recorded = new Float32Array(Uint8Array.from(raw).buffer);
      return { atMs: heard.at * 1000, samples: withoutGaps(recorded) };
    },
    async close() {
      await browser.close();
      profile.remove();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** So many noughts in a row are never decoded sound: the quiet is noise. */
const GAP = 16;

/**
 * A recording without the stretches in which a busy machine played nothing: the element goes on
 * after them where it stopped.
 */
function withoutGaps(recorded: Float32Array): Float32Array {
  const kept: number[] = [];
  let noughts = 0;
  for (const sample of recorded) {
    noughts = sample === 0 ? noughts + 1 : 0;
    kept.push(sample);
    if (noughts === GAP) kept.length -= GAP;
    else if (noughts > GAP) kept.length -= 1;
  }
  return Float32Array.from(kept);
}

/** The element plays into an audio graph of the track's own rate, so that nothing is resampled. */
const prepare = (page: Page): Promise<void> =>
  page.evaluate((rate) => {
    const audio = new Audio();
    const context = new AudioContext({ sampleRate: rate });
    const once = (event: string): Promise<void> =>
      new Promise((resolve) => audio.addEventListener(event, () => resolve(), { once: true }));
    let record: AudioWorkletNode | undefined;

    const load = async (): Promise<number> => {
      const blob = await (await fetch('/track')).blob();
      audio.src = URL.createObjectURL(new Blob([blob], { type: 'audio/mpeg' }));
      await once('loadedmetadata');
      const code = `registerProcessor('tap', class extends AudioWorkletProcessor {
        process([input]) { if (input[0]) this.port.postMessage(input[0].slice()); return true; }
      })`;
      await context.audioWorklet.addModule(
        URL.createObjectURL(new Blob([code], { type: 'text/javascript' })),
      );
      record = new AudioWorkletNode(context, 'tap', { numberOfOutputs: 0 });
      context.createMediaElementSource(audio).connect(record);
      await context.resume();
      return audio.duration;
    };

    const listen = async (from: number, seconds: number) => {
      const parts: Float32Array[] = [];
      const seeked = once('seeked');
      audio.currentTime = from;
      await seeked;
      const at = audio.currentTime;
      let count = 0;
      const enough = new Promise<void>((resolve) => {
        if (record === undefined) throw new Error('nothing is loaded');
        record.port.onmessage = ({ data }: MessageEvent<Float32Array>) => {
          if (count === 0 && data.every((sample) => sample === 0)) return;
          parts.push(data);
          count += data.length;
          if (count >= seconds * rate) resolve();
        };
      });
      await audio.play();
      await enough;
      audio.pause();
      const bytes = new Uint8Array(await new Blob(parts as BlobPart[]).arrayBuffer());
      let text = '';
      for (const byte of bytes) text += String.fromCharCode(byte);
      return { at, samples: btoa(text) };
    };
    Object.assign(window, { load, listen });
  }, RATE);
