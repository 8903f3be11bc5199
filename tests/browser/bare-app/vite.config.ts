import { mergeConfig } from 'vite';
import app from '../../../vite.config.ts';

/** Built exactly as the app is, from the folder beside this file. */
export default mergeConfig(app, { root: import.meta.dirname, publicDir: '../../../src/app/public' });
