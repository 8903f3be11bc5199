import { effect } from '@preact/signals';
import { render } from 'preact';
import { drawingStyles } from '#draw';
import { type JobTable, REVIVERS } from '#jobs';
import { connect, webPort } from '#rpc';
import { LiveSound } from './audio/live-sound.ts';
import { Desk } from './model/desk.ts';
import { keepForOffline } from './offline.ts';
import { Shell } from './view/Shell.tsx';

const styles = new CSSStyleSheet();
styles.replaceSync(drawingStyles());
document.adoptedStyleSheets = [styles];

const client = connect<JobTable>(() => webPort(new Worker(new URL('./jobs.worker.ts', import.meta.url), { type: 'module' })), REVIVERS);
const desk = new Desk(client);
const sound = new LiveSound();
effect(() => {
  document.documentElement.dataset.light = desk.light.value;
});

const place = document.getElementById('app');
if (place) render(<Shell desk={desk} sound={sound} />, place);
void desk.openExample('dipole-and-small-coil.json');
void keepForOffline();
