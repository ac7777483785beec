/** Built for the browser and put into a page by itself: sending and receiving, without screens. */
import { createStore } from 'zustand/vanilla';
import type { ProgrammesState } from '../../../src/app/contract.ts';
import { createPublished, createReceived } from '../../../src/app/exchange-stores.ts';
import { createExchangePorts } from '../../../src/platform/exchange.ts';
import { connect } from '../../../src/platform/store/connection.ts';

function openExchange() {
  const ports = createExchangePorts(connect());
  const files: string[] = [];
  const programmes = createStore<ProgrammesState>(() => ({
    ready: true,
    programmes: [],
    chosen: {},
    chooseGroup: async () => {},
    open: async () => ({ ok: false, error: [] }),
  }));
  const clock = { now: () => Date.now() };
  const share = {
    give: async (_: string, __: string, content: unknown) => void files.push(String(content)),
  };
  return {
    files,
    ports,
    publishing: createPublished({ ports: async () => ports, clock, share }),
    received: createReceived({ ports: async () => ports, clock, programmes }),
  };
}

declare global {
  interface Window {
    exchange: ReturnType<typeof openExchange>;
  }
}

window.exchange = openExchange();
