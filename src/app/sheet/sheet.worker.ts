import { serve, type WebEnd, webPort } from '#rpc';
import { sheetJobs } from './sheet-jobs.ts';

serve(sheetJobs, webPort(globalThis as unknown as WebEnd));
