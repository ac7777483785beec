import type { ExchangeCode } from '../../domain/exchange/problem.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { decodeFrame } from './decode.ts';
import { pixelsOf } from './picture.ts';

/** Long enough for a slow phone to decode one frame and still show the camera's picture. */
const LOOK_EVERY_MS = 200;
const EDGE = 1000;

const wanted: MediaStreamConstraints = {
  audio: false,
  video: { facingMode: 'environment', width: { ideal: 1920 }, height: { ideal: 1080 } },
};

/**
 * Shows the camera in `video` and tells the text of every symbol that is seen, until stopped.
 * Frames never leave the page.
 */
export async function watchCamera(
  video: HTMLVideoElement,
  saw: (text: string) => void,
): Promise<Result<() => void, ExchangeCode>> {
  if (navigator.mediaDevices?.getUserMedia === undefined) return fail('camera-none');
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia(wanted);
  } catch (error) {
    const refused = error instanceof DOMException && error.name === 'NotAllowedError';
    return fail(refused ? 'camera-refused' : 'camera-none');
  }
  video.srcObject = stream;
  video.muted = true;
  // iPhones open a playing video over the whole screen unless told not to.
  video.playsInline = true;
  await video.play().catch(() => undefined);
  const timer = setInterval(() => {
    const { videoWidth: width, videoHeight: height } = video;
    if (width === 0) return;
    const pixels = pixelsOf(video, { width, height }, EDGE);
    const text = pixels && decodeFrame(pixels);
    if (text !== undefined) saw(text);
  }, LOOK_EVERY_MS);
  return ok(() => {
    clearInterval(timer);
    for (const track of stream.getTracks()) track.stop();
    video.srcObject = null;
  });
}
