import { signal } from '@preact/signals';
import { programmeAddresses } from '../shipped-files.ts';
import { type FromPlayer, type Play, RATE, type SoundState, type ToPlayer } from './protocol.ts';
import sinkAddress from './sink.worklet.ts?worker&url';

/** What a live sound is doing, for the screen. */
export type Live =
  | { readonly kind: 'still' }
  | { readonly kind: 'starting' }
  | { readonly kind: 'playing'; readonly rate: number; readonly heard: readonly string[]; readonly leftOut: readonly string[] }
  | { readonly kind: 'refused'; readonly why: string };

let shared: { readonly context: AudioContext; readonly ready: Promise<void> } | null = null;

/** One sound output for the page, made when sound is first asked for: browsers want a person's hand on it. */
function output(): { readonly context: AudioContext; readonly ready: Promise<void> } {
  if (!shared) {
    const context = new AudioContext({ sampleRate: RATE, latencyHint: 'interactive' });
    shared = { context, ready: context.audioWorklet.addModule(sinkAddress) };
  }
  return shared;
}

let sentences: Promise<ArrayBuffer> | null = null;
export function sentencesBytes(): Promise<ArrayBuffer> {
  sentences ??= fetch(programmeAddresses.sentences!).then((r) => {
    if (!r.ok) throw new Error(`the recording could not be loaded (${r.status})`);
    return r.arrayBuffer();
  });
  return sentences;
}

/** A set that plays while it is turned: its engine in a thread of its own, its samples straight into the sound output. */
export class LiveSound {
  readonly live = signal<Live>({ kind: 'still' });
  readonly state = signal<SoundState | null>(null);
  /** the sink had nothing to play: the machine is too slow */
  readonly missed = signal(0);
  #worker: Worker | null = null;
  #node: AudioWorkletNode | null = null;
  #gain: GainNode | null = null;
  #run = 0;

  async start(play: Omit<Play, 'sentences'>): Promise<void> {
    const run = ++this.#run;
    this.live.value = { kind: 'starting' };
    try {
      const { context, ready } = output();
      const [bytes] = await Promise.all([sentencesBytes(), ready, context.resume()]);
      if (run !== this.#run) return;
      this.#begin(context, { ...play, sentences: bytes });
    } catch (e) {
      if (run === this.#run) this.live.value = { kind: 'refused', why: e instanceof Error ? e.message : String(e) };
    }
  }

  /** The dial, while it plays. */
  turn(angle: number): void {
    this.#post({ kind: 'turn', angle });
  }

  setGain(makeUpGain: number): void {
    this.#post({ kind: 'gain', makeUpGain });
  }

  /** Heard or not, at once: for changing between two sets that both play. */
  mute(muted: boolean): void {
    if (this.#gain) this.#gain.gain.setTargetAtTime(muted ? 0 : 1, this.#gain.context.currentTime, 0.01);
  }

  stop(): void {
    this.#run++;
    this.#worker?.terminate();
    this.#worker = null;
    this.#node?.port.postMessage({ source: null });
    this.#node?.disconnect();
    this.#node = null;
    this.state.value = null;
    this.missed.value = 0;
    if (this.live.value.kind !== 'refused') this.live.value = { kind: 'still' };
  }

  /** The last stage before the loudspeaker, for tests and pictures of what is heard. */
  get outlet(): AudioNode | null {
    return this.#gain;
  }

  #begin(context: AudioContext, play: Play): void {
    this.#worker ??= this.#startWorker();
    const worker = this.#worker;
    if (!this.#node || !this.#gain) {
      this.#node = new AudioWorkletNode(context, 'sink', { numberOfInputs: 0, outputChannelCount: [1] });
      this.#gain = new GainNode(context);
      this.#node.connect(this.#gain).connect(context.destination);
      this.#node.port.onmessage = ({ data }: MessageEvent<{ missed: number }>) => {
        this.missed.value = data.missed;
      };
    }
    const { port1, port2 } = new MessageChannel();
    this.#node.port.postMessage({ source: port1 }, [port1]);
    worker.postMessage({ kind: 'play', play, sink: port2 } satisfies ToPlayer, [port2]);
  }

  #startWorker(): Worker {
    const worker = new Worker(new URL('./player.worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<FromPlayer>) => {
      if (data.kind === 'state') this.state.value = data.state;
      else if (data.kind === 'playing') this.live.value = data;
      else {
        this.stop();
        this.live.value = { kind: 'refused', why: data.why };
      }
    };
    worker.onerror = (e) => {
      e.preventDefault();
      this.stop();
      this.live.value = { kind: 'refused', why: `The sound stopped: ${e.message || 'its thread died'}. Start it again.` };
    };
    return worker;
  }

  #post(message: ToPlayer): void {
    this.#worker?.postMessage(message);
  }
}
