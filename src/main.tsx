/** The composition root: the only file that knows both the platform and the screens. */
// First, so that the database opens while the rest is read.
import './platform/store/phone.ts';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createApp } from './app/create-app.ts';
import { browserPorts } from './platform/browser.ts';
import { phone } from './platform/store/phone.ts';
import { createPresence } from './platform/store/presence.ts';
import { startUpdates } from './platform/updates/index.ts';
import './ui/styles/index.css';
import { Towpath } from './ui/Towpath.tsx';
import manifest from './voice/pack/manifest.json?url';
import audio from './voice/pack/voice.bin?url';

const absolute = (path: string): string => new URL(path, document.baseURI).href;

const app = createApp(
  browserPorts({
    connection: phone,
    pack: { manifest: absolute(manifest), audio: absolute(audio) },
    updates: startUpdates(createPresence(navigator.locks)),
    artwork: [
      { src: absolute('icon-192.png'), sizes: '192x192', type: 'image/png' },
      { src: absolute('icon-512.png'), sizes: '512x512', type: 'image/png' },
    ],
  }),
);

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no #root');
createRoot(root).render(
  <StrictMode>
    <Towpath app={app} />
  </StrictMode>,
);
