import { adopt } from './adopt.ts';
import { dial } from './dial.ts';
import { advise, evaluate, outline } from './evaluate.ts';
import { stage } from './stage.ts';

/** Every job there is, for the entries of the threads that serve them. */
export const jobs = { outline, evaluate, advise, adopt, dial, stage };
