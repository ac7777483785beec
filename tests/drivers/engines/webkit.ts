/** Debian's WebKitGTK in its own small browser, by WebDriver, on a screen of its own. */
import { spawn } from 'node:child_process';
import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { Builder, By, Capabilities, type WebDriver } from 'selenium-webdriver';
import { openScreen } from './screen.ts';
import { asText, type Engine, type Tab } from './tab.ts';

export const BROWSER = '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser';
export const ENVIRONMENT = {
  LANG: 'en_GB.UTF-8',
  // The checks run as root, for whom its sandbox cannot be made.
  WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
} as const;
const WINDOW = { x: 10, y: 30, width: 390, height: 844 };

export const webkit: Engine = {
  name: 'WebKitGTK',
  keepsProfile: false,
  async open() {
    const screen = await openScreen();
    const port = await freePort();
    const child = spawn('/usr/bin/WebKitWebDriver', [`--port=${port}`], {
      // Its own process group: the browser that it starts is in it, and nothing else.
      detached: true,
      stdio: 'ignore',
      env: { ...process.env, ...ENVIRONMENT, DISPLAY: screen.display },
    });
    const endAll = (): void => {
      try {
        if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
      } catch {
        // Already gone.
      }
    };
    process.once('exit', endAll);
    const finish = (): void => {
      process.off('exit', endAll);
      endAll();
      screen.close();
    };
    try {
      await answering(port);
      const driver = await new Builder()
        .usingServer(`http://127.0.0.1:${port}`)
        .withCapabilities(
          new Capabilities({
            browserName: 'MiniBrowser',
            'webkitgtk:browserOptions': { binary: BROWSER, args: ['--automation'] },
          }),
        )
        .build();
      await driver.manage().setTimeouts({ script: 60_000, pageLoad: 60_000 });
      await driver.manage().window().setRect(WINDOW);
      return {
        tab: tabOf(driver),
        kill: async () => finish(),
        async close() {
          await driver.quit().catch(() => {});
          finish();
        },
      };
    } catch (error) {
      finish();
      throw error;
    }
  },
};

function tabOf(driver: WebDriver): Tab {
  const find = (css: string) => driver.findElement(By.css(css));
  const run: Tab['run'] = async (job, ...args) => {
    const said = await driver.executeAsyncScript<{ value?: never; error?: string }>(
      `const done = arguments[arguments.length - 1];
       Promise.resolve().then(() => ${asText(job, args)})
         .then((value) => done({ value }), (error) => done({ error: String(error) }));`,
    );
    if (said.error !== undefined) throw new Error(said.error);
    // What is undefined in the page comes as null.
    return (said.value ?? undefined) as never;
  };
  return {
    goto: (url) => driver.get(url),
    reload: () => driver.navigate().refresh(),
    run,
    press: (css) => find(css).click(),
    type: (css, text) => find(css).sendKeys(text),
    give: (css, path) => find(css).sendKeys(path),
    hide: () => driver.manage().window().minimize(),
    show: async () => void (await driver.manage().window().setRect(WINDOW)),
    picture: async () => Buffer.from(await driver.takeScreenshot(), 'base64'),
  };
}

export function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });
}

async function answering(port: number): Promise<void> {
  for (let attempt = 0; attempt < 100; attempt += 1) {
    const there = await fetch(`http://127.0.0.1:${port}/status`).then(
      () => true,
      () => false,
    );
    if (there) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error('WebKitWebDriver does not answer');
}
