// Plain Node, no dependencies: ensure.mjs needs it before anything is installed.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const onPath = (name) =>
  (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));

/** A Chromium of this machine: CHROMIUM_PATH, else the first of the usual names on the PATH; undefined where there is none. */
export const findChromium = () => {
  const given = process.env.CHROMIUM_PATH;
  if (given) return existsSync(given) ? given : undefined;
  return ['chromium', 'chromium-browser', 'google-chrome'].map(onPath).find(Boolean);
};
