/** The programs from Debian that the checks use: browsers, decoders, encoders, speech tools, web servers. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const GSTREAMER = '/usr/lib/x86_64-linux-gnu/gstreamer-1.0';

/** Package by package, and one file by which it is known to be there. */
const PACKAGES = {
  chromium: '/usr/bin/chromium',
  'firefox-esr': '/usr/bin/firefox-esr',
  'webkit2gtk-driver': '/usr/bin/WebKitWebDriver',
  'gstreamer1.0-plugins-good': `${GSTREAMER}/libgstautodetect.so`,
  'gstreamer1.0-libav': `${GSTREAMER}/libgstlibav.so`,
  xvfb: '/usr/bin/Xvfb',
  openbox: '/usr/bin/openbox',
  ffmpeg: '/usr/bin/ffmpeg',
  mpg123: '/usr/bin/mpg123',
  mp3val: '/usr/bin/mp3val',
  lame: '/usr/bin/lame',
  sox: '/usr/bin/sox',
  flite: '/usr/bin/flite',
  pocketsphinx: '/usr/bin/pocketsphinx_batch',
  'pocketsphinx-en-us': '/usr/share/pocketsphinx/model/en-us/en-us/mdef',
  'zbar-tools': '/usr/bin/zbarimg',
  imagemagick: '/usr/bin/convert',
  'nginx-light': '/usr/sbin/nginx',
  lighttpd: '/usr/sbin/lighttpd',
  'lighttpd-mod-deflate': '/usr/lib/lighttpd/mod_deflate.so',
  'fonts-dejavu-core': '/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf',
};

const missing = () => Object.keys(PACKAGES).filter((name) => !existsSync(PACKAGES[name]));

/** Installs what is missing when that is possible here; else says how to, and ends the run. */
export function provideTools() {
  const names = missing();
  if (names.length === 0) return;
  const line = `apt-get install -y --no-install-recommends ${names.join(' ')}`;
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) {
    console.error(
      `These programs are needed: ${names.join(', ')}. On Debian, as root:\n\n  ${line}\n`,
    );
    process.exit(1);
  }
  console.log(line);
  apt('update', '-q');
  apt('install', '-y', '-q', '--no-install-recommends', ...names);
  const still = missing();
  if (still.length > 0) {
    console.error(`Still missing after the installation: ${still.join(', ')}`);
    process.exit(1);
  }
}

function apt(...args) {
  const run = spawnSync('apt-get', args, {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  if (run.status !== 0) console.error(`apt-get ${args[0]} ended with ${run.status}`);
}
