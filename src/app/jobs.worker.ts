import { serve, type WebEnd, webPort } from '#rpc';
import { jobs } from '../jobs/table.ts';

serve(jobs, webPort(globalThis as unknown as WebEnd));
