import { spawn, spawnSync } from 'node:child_process';
import { MPEGDecoder } from 'mpg123-decoder';

export const RATE = 24_000;

/** Samples of an MP3 file, 24 kHz, one channel, as ffmpeg's decoder gives them: nothing cut off. */
export async function decodeFfmpeg(mp3: Uint8Array): Promise<Int16Array> {
  const args = ['-v', 'error', '-f', 'mp3', '-i', 'pipe:0', '-f', 's16le', '-ar', `${RATE}`, '-'];
  return samplesOf(await pipe('ffmpeg', args, mp3));
}

/** The same by mpg123, another decoder altogether (`MPEGDecoder` is its WebAssembly build). */
export async function decodeMpg123(mp3: Uint8Array): Promise<Float32Array> {
  const decoder = new MPEGDecoder();
  await decoder.ready;
  const { channelData, errors, sampleRate } = decoder.decode(mp3);
  decoder.free();
  if (errors.length > 0) throw new Error(`mpg123: ${errors[0]?.message}`);
  if (sampleRate !== RATE) throw new Error(`mpg123: ${sampleRate} Hz`);
  return channelData[0] ?? new Float32Array();
}

/** The same by Debian's `mpg123`. */
export async function decodeMpg123Binary(mp3: Uint8Array): Promise<Int16Array> {
  return samplesOf(await pipe('mpg123', ['-q', '-s', '--mono', '-'], mp3));
}

/** What ffmpeg's demuxer says of a file before decoding it. */
export function probe(file: string): { duration: number; bitRate: number; start: number } {
  const args = [
    '-v',
    'error',
    '-of',
    'json',
    '-show_entries',
    'format=duration,bit_rate,start_time',
  ];
  const run = spawnSync('ffprobe', [...args, file], { encoding: 'utf8' });
  if (run.status !== 0) throw new Error(`ffprobe: ${run.stderr}`);
  const { format } = JSON.parse(run.stdout);
  return {
    duration: Number(format.duration),
    bitRate: Number(format.bit_rate),
    start: Number(format.start_time),
  };
}

/** Every line that `mp3val` says of a file except that it has no title tags. */
export function validate(file: string): { complaints: string[]; frames: number } {
  const run = spawnSync('mp3val', [file], { encoding: 'utf8' });
  if (run.status !== 0) throw new Error(`mp3val: ${run.stderr}`);
  const said = run.stdout.split('\n');
  const complaints = said.filter(
    (line) => /^(WARNING|ERROR)/.test(line) && !line.endsWith('No supported tags in the file'),
  );
  const frames = Number(/: (\d+) MPEG frames \(MPEG 2 Layer III\)/.exec(run.stdout)?.[1]);
  return { complaints, frames };
}

const samplesOf = (raw: Buffer): Int16Array =>
  new Int16Array(raw.buffer, raw.byteOffset, raw.byteLength / 2);

function pipe(command: string, args: string[], input: Uint8Array): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { stdio: ['pipe', 'pipe', 'pipe'] });
    const out: Buffer[] = [];
    const said: Buffer[] = [];
    child.stdout.on('data', (chunk) => out.push(chunk));
    child.stderr.on('data', (chunk) => said.push(chunk));
    child.on('error', reject);
    child.on('close', (code) => {
      const complaint = Buffer.concat(said).toString();
      if (code === 0 && complaint === '') resolve(Buffer.concat(out));
      else reject(new Error(`${command} ended with ${code}: ${complaint}`));
    });
    child.stdin.on('error', reject);
    child.stdin.end(input);
  });
}
