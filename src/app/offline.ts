import { signal } from '@preact/signals';

/** A newer version is stored; it takes over at the next load that no other window of the app hinders. */
export const newVersionReady = signal(false);

/**
 * Has the browser keep this version of the app, so that it opens without a network.
 *
 * Browsers refuse this in some private windows and on addresses that are neither https nor the machine itself; the app works there too, but only
 * with a network, so a refusal is no error.
 */
export async function keepForOffline(): Promise<void> {
  if (import.meta.env.DEV || !('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  // before there is one, a worker that gets installed is the first and no news
  const hadOne = serviceWorker.controller !== null;
  const registration = await serviceWorker.register(new URL('sw.js', document.baseURI)).catch(() => null);
  if (!registration) return;
  const watch = (worker: ServiceWorker | null): void => {
    const look = (): void => {
      if (hadOne && worker?.state === 'installed') newVersionReady.value = true;
    };
    worker?.addEventListener('statechange', look);
    look();
  };
  watch(registration.waiting ?? registration.installing);
  registration.addEventListener('updatefound', () => watch(registration.installing));
}
