import { readFileSync } from 'node:fs';
import { MessageChannel } from 'node:worker_threads';
import { type Document, type JobTable, REVIVERS } from '#jobs';
import { type Client, connect, nodePort, serve } from '#rpc';
import { jobs } from '../../../src/jobs/table.ts';

const TOWN = 'fenmarket.json';

/** An example as the app hands it in: its text, and the text of the town it refers to. */
export function document(name: string): Document {
  return { text: readFileSync(`examples/${name}`, 'utf8'), files: { [TOWN]: readFileSync(`examples/${TOWN}`, 'utf8') } };
}

/** The job table behind a line, all in one thread: what goes over is copied as between threads. */
export function bench(): Client<JobTable> {
  const { port1, port2 } = new MessageChannel();
  serve(jobs, nodePort(port2));
  return connect<JobTable>(() => nodePort(port1), REVIVERS);
}

export function ok<T>(answer: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly unknown[] }): T {
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems, null, 1));
  return answer.value;
}
