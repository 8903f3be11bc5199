import { createStore, get, update } from 'idb-keyval';
import type { Storage, TabLine } from './keeper.ts';
import type { KeptRecord } from './kept-record.ts';

const KEY = 'work';

/** Work kept in the browser's database. Opened at the first use, so that a browser that refuses it does so where it is handled. */
export function browserStorage(): Storage {
  let store: ReturnType<typeof createStore> | null = null;
  const opened = (): ReturnType<typeof createStore> => {
    store ??= createStore('earshot', 'kept');
    return store;
  };
  return {
    read: async () => get<unknown>(KEY, opened()),
    update: async (next) => update<KeptRecord>(KEY, next, opened()),
  };
}

/** The other tabs, told of each save. */
export function browserTabs(): TabLine {
  const channel = new BroadcastChannel('earshot');
  return {
    post: (revision) => channel.postMessage(revision),
    onMessage: (handler) =>
      channel.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
        if (typeof data === 'number') handler(data);
      }),
  };
}
