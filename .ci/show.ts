/** The last step of `npm start`: serves the built app and says where. */
import { networkInterfaces } from 'node:os';
import { fileURLToPath } from 'node:url';
import { serve } from './serve.ts';

const folder = fileURLToPath(new URL('../dist', import.meta.url));
const everywhere = process.argv.includes('--lan');
const wanted = Number(process.env.PORT ?? 4173);
const { port } = await serve(folder, wanted, everywhere ? '0.0.0.0' : '127.0.0.1');

console.log(`
  Towpath is at  http://localhost:${port}

  Stop it with Ctrl+C.`);
if (everywhere) {
  for (const address of Object.values(networkInterfaces()).flat()) {
    if (address?.family === 'IPv4' && !address.internal) {
      console.log(`  On this network: http://${address.address}:${port}`);
    }
  }
  console.log(`
  Browsers give offline use, installing and the wake lock to https and to localhost only.
  Over the network as above the app runs, but it does not stay on the phone: for that, put the
  folder dist on any https host. It needs no server of its own.`);
} else {
  console.log(`
  To look at it from a phone on the same network:  npm start -- --lan
  To use it from a phone: put the folder dist on any https host. It needs no server of its own.`);
}
