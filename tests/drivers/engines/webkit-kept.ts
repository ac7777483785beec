/**
 * Debian's WebKitGTK in its own small browser, with a profile that is kept: under its driver the
 * browser keeps none, so here it is asked by way of its inspector.
 */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { inspect } from './inspected.ts';
import { until } from './person.ts';
import { openScreen } from './screen.ts';
import { asText, type Engine, type Tab } from './tab.ts';
import { BROWSER, ENVIRONMENT, freePort } from './webkit.ts';

export const webkitKept: Engine = {
  name: 'WebKitGTK',
  keepsProfile: true,
  async open({ folder }) {
    const screen = await openScreen();
    const port = await freePort();
    const child = spawn(BROWSER, ['--geometry=390x844', 'about:blank'], {
      // Its own process group: those of its pages and its store are in it, and nothing else.
      detached: true,
      stdio: 'ignore',
      env: {
        ...process.env,
        ...ENVIRONMENT,
        DISPLAY: screen.display,
        XDG_DATA_HOME: join(folder, 'data'),
        XDG_CACHE_HOME: join(folder, 'cache'),
        XDG_CONFIG_HOME: join(folder, 'config'),
        WEBKIT_INSPECTOR_HTTP_SERVER: `127.0.0.1:${port}`,
      },
    });
    const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
    /** @returns whether there was any of them left to be told */
    const tellAll = (signal: NodeJS.Signals | 0): boolean => {
      try {
        return child.pid !== undefined && process.kill(-child.pid, signal);
      } catch {
        return false;
      }
    };
    const endAll = (): void => void tellAll('SIGKILL');
    process.once('exit', endAll);
    const kill = async (): Promise<void> => {
      process.off('exit', endAll);
      endAll();
      await gone;
      screen.close();
    };
    /** The process that keeps what is stored ends when the browser has, after it wrote everything. */
    const close = async (): Promise<void> => {
      child.kill('SIGTERM');
      await gone;
      await until('its other processes to end', async () => !tellAll(0) || undefined).catch(
        () => {},
      );
      await kill();
    };
    try {
      const page = await inspect(port);
      return { tab: tabOf(page), kill, close };
    } catch (error) {
      await kill();
      throw error;
    }
  },
};

function tabOf({ send, evaluate }: Awaited<ReturnType<typeof inspect>>): Tab {
  const run: Tab['run'] = async (job, ...args) => (await evaluate(asText(job, args))) as never;
  /** Sends what leads to another document, and waits until that is there whole. */
  const turnTo = async (method: string, params?: object): Promise<void> => {
    await run(() => document.documentElement.setAttribute('data-left', ''));
    // Its answer may be lost with the page that was asked.
    await send(method, params).catch(() => {});
    await until('the page to load', () =>
      run(() => {
        const isLeft = document.documentElement.hasAttribute('data-left');
        return isLeft || document.readyState !== 'complete' ? undefined : true;
      }),
    );
  };
  const cannot = async (): Promise<never> => {
    throw new Error('the window of a browser without a driver stays where it is');
  };
  return {
    goto: (url) => turnTo('Page.navigate', { url }),
    reload: () => turnTo('Page.reload'),
    run,
    press: (css) => run((which) => document.querySelector<HTMLElement>(which)?.click(), css),
    type: (css, text) =>
      run(
        (which, what) => {
          document.querySelector<HTMLElement>(which)?.focus();
          document.execCommand('insertText', false, what);
        },
        css,
        text,
      ),
    give: (css, path) =>
      run(
        (which, name, text) => {
          const field = document.querySelector<HTMLInputElement>(which);
          const files = new DataTransfer();
          files.items.add(new File([text], name));
          if (field === null) return;
          field.files = files.files;
          field.dispatchEvent(new Event('change', { bubbles: true }));
        },
        css,
        basename(path),
        readFileSync(path, 'utf8'),
      ),
    hide: cannot,
    show: cannot,
    async picture() {
      const whole = { x: 0, y: 0, width: 390, height: 844, coordinateSystem: 'Viewport' };
      const { dataURL } = await send<{ dataURL: string }>('Page.snapshotRect', whole);
      return Buffer.from(dataURL.replace(/^.*,/, ''), 'base64');
    },
  };
}
