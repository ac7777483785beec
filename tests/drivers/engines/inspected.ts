/** A page of WebKit by the protocol of its own inspector, which needs no driver beside the browser. */
import WebSocket from 'ws';
import { until } from './person.ts';

export interface Inspected {
  /** Sends a command of the protocol to the page. @throws what the page answers as an error */
  send<T>(method: string, params?: object): Promise<T>;
  /**
   * The value of an expression, or what its promise comes to, begun as if a person had just touched
   * the page. @throws what it throws
   */
  evaluate(expression: string): Promise<unknown>;
}

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: {
    readonly targetInfo?: { readonly targetId: string; readonly isProvisional?: boolean };
    readonly newTargetId?: string;
    readonly message?: string;
  };
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

interface Evaluated {
  readonly result: {
    readonly value?: unknown;
    readonly objectId?: string;
    readonly description?: string;
  };
  readonly wasThrown?: boolean;
}

/** @param port where the browser was told to be inspected */
export async function inspect(port: number): Promise<Inspected> {
  const at = `127.0.0.1:${port}`;
  const path = await until('a page to inspect', async () => {
    const list = await fetch(`http://${at}/`).then((answer) => answer.text());
    return /socket\/\d+\/\d+\/WebPage/.exec(list)?.[0];
  });
  const socket = new WebSocket(`ws://${at}/${path}`);
  const waiting = new Map<number, (said: Message) => void>();
  /** Where the page is: it goes on in another process when it goes to another site. */
  let target: string | undefined;
  socket.on('message', (bytes) => {
    const said = JSON.parse(String(bytes)) as Message;
    const { targetInfo, newTargetId, message } = said.params ?? {};
    if (said.method === 'Target.targetCreated' && targetInfo?.isProvisional !== true)
      isAt(targetInfo?.targetId);
    else if (said.method === 'Target.didCommitProvisionalTarget') isAt(newTargetId);
    else if (said.method === 'Target.dispatchMessageFromTarget')
      answered(JSON.parse(message ?? ''));
    // That a command was passed on is no answer to it; that it was not is one.
    else if (said.error !== undefined) answered(said);
  });
  // A browser that is killed may end it in any way, and nobody is left to answer.
  socket.on('error', () => {});
  socket.on('close', () => isAt(undefined));
  await until('the page to be inspected', async () => target);

  /** What the page before was asked, it does not answer any more. */
  function isAt(newTarget: string | undefined): void {
    target = newTarget;
    for (const tell of [...waiting.values()])
      tell({ error: { message: 'the page that was asked is gone' } });
  }

  function answered(said: Message): void {
    waiting.get(said.id ?? 0)?.(said);
  }

  let count = 0;
  async function send<T>(method: string, params: object = {}): Promise<T> {
    count += 1;
    const id = count;
    const said = await new Promise<Message>((resolve, reject) => {
      const late = setTimeout(() => reject(new Error(`no answer to ${method}`)), 30_000);
      waiting.set(id, (message) => {
        clearTimeout(late);
        waiting.delete(id);
        resolve(message);
      });
      const message = JSON.stringify({ id, method, params });
      const passOn = { id, method: 'Target.sendMessageToTarget' };
      socket.send(JSON.stringify({ ...passOn, params: { targetId: target, message } }));
    });
    if (said.error !== undefined) throw new Error(said.error.message);
    return said.result as T;
  }

  return {
    send,
    async evaluate(expression) {
      const begun = await send<Evaluated>('Runtime.evaluate', {
        expression: `Promise.resolve(${expression})`,
        emulateUserGesture: true,
      });
      const { result, wasThrown } = begun.wasThrown
        ? begun
        : await send<Evaluated>('Runtime.awaitPromise', {
            promiseObjectId: begun.result.objectId,
            returnByValue: true,
          });
      if (wasThrown) throw new Error(result.description);
      return result.value;
    },
  };
}
