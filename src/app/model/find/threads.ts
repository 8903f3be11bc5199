import { type JobTable, REVIVERS } from '#jobs';
import { type Client, connect, webPort } from '#rpc';

/** More threads than this gain little: structures are shared out among them. */
const MOST = 4;

/** Threads of a search's own, so that the one of the bench stays free for the dial. */
export function threads(): readonly Client<JobTable>[] {
  const count = Math.min(MOST, Math.max(1, navigator.hardwareConcurrency || 1));
  return Array.from({ length: count }, thread);
}

/** One thread beside that of the bench. */
export const thread = (): Client<JobTable> =>
  connect<JobTable>(() => webPort(new Worker(new URL('../../jobs.worker.ts', import.meta.url), { type: 'module' })), REVIVERS);
