import { signal } from '@preact/signals';
import { sentencesBytes } from './live-sound.ts';
import type { FromRecorder, Play, ToRecorder } from './protocol.ts';

export type Recording =
  | { readonly kind: 'none' }
  | { readonly kind: 'writing'; readonly done: number }
  | { readonly kind: 'written'; readonly bytes: Uint8Array<ArrayBuffer>; readonly words: string }
  | { readonly kind: 'refused'; readonly why: string };

/** Writes what a set gives into a WAV file, faster than it would play; can be called off. */
export class Recorder {
  readonly state = signal<Recording>({ kind: 'none' });
  #worker: Worker | null = null;

  async start(play: Omit<Play, 'sentences'>, seconds: number, name: string): Promise<void> {
    this.stop();
    this.state.value = { kind: 'writing', done: 0 };
    const sentences = await sentencesBytes().catch(() => null);
    if (!sentences) {
      this.state.value = { kind: 'refused', why: 'The recording of the sentences could not be loaded.' };
      return;
    }
    const worker = new Worker(new URL('./recorder.worker.ts', import.meta.url), { type: 'module' });
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<FromRecorder>) => this.#hear(data);
    worker.onerror = (e) => {
      e.preventDefault();
      this.#end({ kind: 'refused', why: `The file was not written: ${e.message || 'its thread died'}.` });
    };
    worker.postMessage({ play: { ...play, sentences }, seconds, name } satisfies ToRecorder);
  }

  stop(): void {
    this.#end({ kind: 'none' });
  }

  #hear(message: FromRecorder): void {
    if (message.kind === 'progress') this.state.value = { kind: 'writing', done: message.done };
    else if (message.kind === 'refused') this.#end(message);
    else {
      const clipped = message.clipped > 0 ? ` ${message.clipped} samples were beyond full scale: lower the make-up gain.` : '';
      this.#end({ kind: 'written', bytes: message.bytes, words: `${message.level}${clipped}` });
    }
  }

  #end(state: Recording): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.state.value = state;
  }
}
