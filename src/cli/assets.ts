import { fileURLToPath } from 'node:url';

/** The recording that comes with Earshot; this module stands as deep as the bundle does. */
export const SENTENCES = fileURLToPath(new URL('../../assets/programmes/sentences.wav', import.meta.url));
