import { effect } from '@preact/signals';
import { render } from 'preact';
import { type JobTable, REVIVERS } from '#jobs';
import { connect, webPort } from '#rpc';
import { LiveSound } from './audio/live-sound.ts';
import { Desk } from './model/desk.ts';
import { light } from './model/light.ts';
import { Listening } from './model/listening.ts';
import { keepForOffline } from './offline.ts';
import { Shell } from './view/Shell.tsx';

const client = connect<JobTable>(() => webPort(new Worker(new URL('./jobs.worker.ts', import.meta.url), { type: 'module' })), REVIVERS);
const desk = new Desk(client);
const listening = new Listening(desk.bench, new LiveSound());
effect(() => {
  document.documentElement.dataset.light = light.value;
});

// what goes to the loudspeaker, for whoever wants to measure it: tests do
Object.defineProperty(globalThis, 'earshotOutlet', { value: () => listening.sound.outlet });

const place = document.getElementById('app');
if (place) render(<Shell desk={desk} listening={listening} />, place);
void desk.begin(location.hash);
addEventListener('hashchange', () => void desk.openLink(location.hash));
void keepForOffline();
