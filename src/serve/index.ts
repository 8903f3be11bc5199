/** The built app from this machine to this machine: a static server bound to the loopback addresses, and nothing else. */
export { HEADER_POLICY, PAGE_POLICY } from './content-policy.ts';
export { DEFAULT_PORT, PortTaken, type Served, serveFolder } from './serve-folder.ts';
