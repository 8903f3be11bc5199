/**
 * All that the page does which the service worker gives instead of the app when a newer version waits and no other window is open: it lets the
 * newer version take over, and loads again under it.
 */
async function takeOver(): Promise<void> {
  const { serviceWorker } = navigator;
  const again = (): void => location.reload();
  serviceWorker.addEventListener('controllerchange', again);
  // an old worker that is asked for something just now may hold its place until it is asked again; whatever hinders the newer one, the app opens
  setTimeout(again, 2000);
  const waiting = (await serviceWorker.getRegistration())?.waiting;
  if (waiting) waiting.postMessage('take over');
  else again();
}

void takeOver();

export {};
