import { decodeFrame, decodePicture } from '../../src/platform/codes/decode.ts';
import { drawCode } from '../../src/platform/codes/draw.ts';
import { colours, type Grey, printed } from '../drivers/exchange/picture.ts';
import type { Decoder, Written } from './decoders.ts';
import type { Seeds } from './mutate.ts';
import type { Random } from './random.ts';
import { polluted } from './scratch.ts';

const TEXT = 'https://club.example/app/#/join/A';

function damaged(picture: Grey, random: Random): Grey {
  const data = Uint8Array.from(picture.data);
  for (let n = random.below(12); n > 0; n--) {
    // Stripes and spots: a fold in the paper, a finger, a lamp.
    const from = random.below(data.length);
    data.fill(random.below(256), from, from + random.below(400));
  }
  for (let n = random.below(200); n > 0; n--) data[random.below(data.length)] = random.below(256);
  return { ...picture, data };
}

/** What a camera or a chosen picture shows. */
export function pictureDecoder(_: Seeds): Decoder<Written & { readonly picture: Grey }> {
  const code = drawCode(TEXT);
  if (code === undefined) throw new Error('no code');
  const whole = printed(code, 3);
  return {
    name: 'picture of a code',
    share: 1,
    make(random) {
      const noise = { ...whole, data: random.bytes(whole.data.length) };
      const picture = random.chance(0.1) ? noise : damaged(whole, random);
      return { kind: 'picture', content: picture.data, picture };
    },
    async look({ picture }) {
      const pixels = colours(picture);
      const texts = [decodeFrame(pixels), ...(await decodePicture(pixels))];
      // Error correction gives the text or nothing; another text would be a wrong correction.
      const other = texts.find((text) => text !== undefined && text !== TEXT);
      return other === undefined ? polluted() : `read as ${JSON.stringify(other.slice(0, 40))}`;
    },
  };
}
