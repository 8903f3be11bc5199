import { spawnSync } from 'node:child_process';

/** Builds an app as it is shipped into a folder, which is emptied before. */
export function buildApp(folder: string, config = 'vite.config.ts', env: Readonly<Record<string, string>> = {}): void {
  const { status } = spawnSync(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', '--config', config, '--outDir', folder, '--emptyOutDir', '--logLevel', 'warn'],
    // the runner says "test" here, which would give another app than the one that is shipped
    { stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, ...env, NODE_ENV: 'production' } },
  );
  if (status !== 0) throw new Error('the app could not be built');
}
