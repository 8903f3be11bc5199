/** One protocol for Web Workers and worker_threads: typed jobs, progress, cancel, transfer, an answer even when a worker dies. */
export { type CallOptions, type Client, connect, type Given, type Result } from './connect.ts';
export { Cancelled, type Fault, type Revivers, WorkerDied } from './errors.ts';
export { controller, type Signal } from './globals.ts';
export { Latest } from './latest.ts';
export { mapPool, type PoolOptions } from './map-pool.ts';
export { type NodeEnd, nodePort, type Port, type WebEnd, webPort } from './port.ts';
export { type JobContext, type Jobs, serve } from './serve.ts';
