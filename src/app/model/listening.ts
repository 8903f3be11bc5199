import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import { LiveSound } from '../audio/live-sound.ts';
import type { Play, Sent } from '../audio/protocol.ts';
import { Pair } from './pair.ts';
import type { Workbench } from './workbench.ts';

/** What a person chose to hear, and the sound of the set on the bench. */
export class Listening {
  readonly sound: LiveSound;
  readonly sent = signal<Sent>({ kind: 'own' });
  readonly with = signal<Play['with']>({ neighbours: false, room: true, hearingLimit: true, noise: true });
  /** stated on the screen, never chosen by the sound [dB] */
  readonly makeUpGain = signal(20);
  readonly notice = signal<string | null>(null);
  /** the set on the bench and another one, heard in turn */
  readonly pair: Pair;
  readonly #bench: Workbench;
  readonly #asked: ReadonlySignal<Omit<Play, 'sentences'> | null>;

  constructor(bench: Workbench, sound: LiveSound) {
    this.#bench = bench;
    this.sound = sound;
    this.#asked = computed(() => this.#play());
    this.pair = new Pair(sound, new LiveSound(), this.#asked, bench.shown);
    // a turn of the dial is heard at once; anything else that changes starts the set anew
    effect(() => {
      const angle = this.#angle();
      if (angle !== null) untracked(() => sound.turn(angle));
    });
    effect(() => sound.setGain(this.makeUpGain.value));
    effect(() => {
      // what it depends on: the document, the station, and what is to be heard
      const again = [bench.document.value, bench.station.value, this.sent.value, this.with.value];
      untracked(() => {
        if (again.length > 0 && sound.live.value.kind === 'playing') void this.play();
      });
    });
  }

  /** What the set on the bench is asked to play; null where the dial does not reach its station. */
  asked(): Omit<Play, 'sentences'> | null {
    return this.#asked.value;
  }

  async play(): Promise<void> {
    const play = this.#asked.peek();
    this.notice.value = play ? null : 'The dial does not reach this station, so there is nothing to hear.';
    if (play) await this.sound.start(play);
  }

  #play(): Omit<Play, 'sentences'> | null {
    const [station, angle] = [this.#bench.shown.value, this.#angle()];
    if (!station || angle === null) return null;
    const { text, files = {} } = this.#bench.document.value;
    const [sent, heard, makeUpGain] = [this.sent.value, this.with.value, this.makeUpGain.value];
    return { text, files, station: station.name, angle, sent, with: heard, makeUpGain };
  }

  #angle(): number | null {
    return this.#bench.hand.value ?? this.#bench.shown.value?.angle ?? null;
  }
}
