import { parentPort } from 'node:worker_threads';
import { nodePort, serve } from '#rpc';
import { jobs } from '../jobs/table.ts';

if (!parentPort) throw new Error('this file is started as a worker thread');
serve(jobs, nodePort(parentPort));
