import { MessageChannel } from 'node:worker_threads';
import { nodePort, type Port } from '#rpc';

/** Both ends of a line within one thread. */
export function localLine(): readonly [near: Port, far: Port] {
  const { port1, port2 } = new MessageChannel();
  return [nodePort(port1), nodePort(port2)];
}
