import { keepForOffline, newVersionReady } from '../../../src/app/offline.ts';
import worklet from './doubler.worklet.ts?worker&url';

const put = (selector: string, text: string): void => {
  const element = document.querySelector(selector);
  if (element) element.textContent = text;
};

async function threads(): Promise<string> {
  const worker = new Worker(new URL('./adder.worker.ts', import.meta.url), { type: 'module' });
  const sum = await new Promise((resolve, reject) => {
    worker.onmessage = (e) => resolve(e.data);
    worker.onerror = () => reject(new Error('the worker could not be loaded'));
    worker.postMessage([2, 3]);
  });
  const context = new OfflineAudioContext(1, 128, 48_000);
  await context.audioWorklet.addModule(worklet);
  const source = new ConstantSourceNode(context, { offset: 0.25 });
  source.connect(new AudioWorkletNode(context, 'doubler')).connect(context.destination);
  source.start();
  const rendered = await context.startRendering();
  return `worker ${sum}, worklet ${rendered.getChannelData(0)[100]}`;
}

put('h1', `version ${import.meta.env.VITE_BARE_VERSION}`);
threads().then(
  (text) => put('#threads', text),
  (e: Error) => put('#threads', e.message),
);
document.querySelector('button')?.addEventListener('click', async () => put('#later', (await import('./later.ts')).later()));
newVersionReady.subscribe((ready) => put('#news', `new version: ${ready}`));
void keepForOffline();
