/** A person at a tab of any engine, who finds things by what they are and what they are called. */
import type { Tab } from './tab.ts';

export type Kind = 'button' | 'link' | 'heading' | 'field';
export type Name = string | RegExp;

const PATIENCE_MS = 20_000;

export interface Person {
  readonly tab: Tab;
  /** Waits for it to be there and in view. @returns the selector of the first such element */
  see(kind: Kind, name: Name, patience?: number): Promise<string>;
  sees(kind: Kind, name: Name): Promise<boolean>;
  press(kind: Kind, name: Name, patience?: number): Promise<void>;
  /** Presses whichever of several buttons comes first. @returns which */
  pressFirst(...names: readonly Name[]): Promise<Name>;
  write(name: Name, text: string): Promise<void>;
  give(name: Name, path: string): Promise<void>;
  /** Waits for a text anywhere on the page. */
  read(text: Name, patience?: number): Promise<void>;
  text(): Promise<string>;
  /** Goes to an address inside the app. */
  go(path: string): Promise<void>;
}

/** Asks until there is an answer other than undefined. */
export async function until<T>(
  what: string,
  ask: () => Promise<T | undefined>,
  patience = PATIENCE_MS,
): Promise<T> {
  const end = performance.now() + patience;
  let trouble: unknown;
  for (;;) {
    // A page on its way to another one cannot answer: it is asked again.
    const answer = await ask().catch((error: unknown) => {
      trouble = error;
      return undefined;
    });
    if (answer !== undefined) return answer;
    if (performance.now() > end)
      throw new Error(`waited in vain for ${what}${trouble === undefined ? '' : `: ${trouble}`}`);
    await new Promise((resolve) => setTimeout(resolve, 120));
  }
}

export function personAt(tab: Tab): Person {
  const look = async (kind: Kind, name: Name): Promise<string | undefined> =>
    (await tab.run(mark, kind, ...pattern(name))) ?? undefined;
  const see = (kind: Kind, name: Name, patience?: number): Promise<string> =>
    until(`${kind} ${name}`, () => look(kind, name), patience);
  const text = (): Promise<string> => tab.run(() => document.body.innerText);
  return {
    tab,
    see,
    text,
    sees: async (kind, name) => (await look(kind, name)) !== undefined,
    press: async (kind, name, patience) =>
      void (await until(`${kind} ${name} to be pressed`, () => pressed(kind, name), patience)),
    pressFirst: (...names) =>
      until(`one of ${names.join(', ')}`, async () => {
        for (const name of names)
          if ((await look('button', name)) !== undefined) {
            await pressed('button', name);
            return name;
          }
        return undefined;
      }),
    write: async (name, what) => tab.type(await see('field', name), what),
    give: async (name, path) => tab.give(await see('field', name), path),
    read: async (what, patience) =>
      void (await until(
        `text ${what}`,
        async () => {
          const all = await text();
          return (typeof what === 'string' ? all.includes(what) : what.test(all)) || undefined;
        },
        patience,
      )),
    go: (path) =>
      tab.run((to) => {
        location.hash = to;
      }, path),
  };

  async function pressed(kind: Kind, name: Name): Promise<true | undefined> {
    const css = await look(kind, name);
    if (css === undefined) return undefined;
    await tab.press(css);
    return true;
  }
}

const pattern = (name: Name): [source: string, flags: string] =>
  typeof name === 'string'
    ? [`^${name.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')}$`, '']
    : [name.source, name.flags];

/** Runs in the page: gives the first fitting element a mark of its own to be found by. */
function mark(kind: string, source: string, flags: string): string | null {
  const css = {
    button: 'button, summary, [role=button]',
    link: 'a[href]',
    heading: 'h1, h2, h3',
    field: 'input, textarea, select',
  }[kind];
  const wanted = new RegExp(source, flags);
  const plain = (text: string | null | undefined): string =>
    (text ?? '').replace(/\s+/g, ' ').trim();
  const named = (element: Element): readonly string[] => {
    const label = element.getAttribute('aria-label');
    if (label !== null) return [plain(label)];
    const by = element.getAttribute('aria-labelledby');
    if (by !== null)
      return [
        plain(
          by
            .split(' ')
            .map((id) => document.getElementById(id)?.textContent)
            .join(' '),
        ),
      ];
    const labels = (element as HTMLInputElement).labels;
    if (labels != null && labels.length > 0)
      return [...labels].map((each) => plain(each.textContent));
    return [plain(element.textContent)];
  };
  for (const element of document.querySelectorAll<HTMLElement>(css ?? kind)) {
    if (!named(element).some((name) => wanted.test(name))) continue;
    const there = (element as HTMLInputElement).type === 'file' || element.getClientRects().length;
    const ready = element.getAttribute('aria-disabled') !== 'true' && !element.matches(':disabled');
    if (!there || !ready) continue;
    element.dataset.found ??= Math.random().toString(36).slice(2);
    return `[data-found="${element.dataset.found}"]`;
  }
  return null;
}
