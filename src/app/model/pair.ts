import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { StationResult } from '#jobs';
import type { LiveSound } from '../audio/live-sound.ts';
import type { Play } from '../audio/protocol.ts';
import type { ShelvedSet } from './shelf.ts';

type Asked = Omit<Play, 'sentences'>;

/** A second set that plays along, to be heard in turn with the one on the bench. */
export class Pair {
  readonly other = signal<{ readonly set: ShelvedSet; readonly station: StationResult | null } | null>(null);
  readonly hearsOther = signal(false);
  /** the other made as loud as the one on the bench */
  readonly matched = signal(false);
  /** by which the other is played louder then [dB], by the steady levels of both */
  readonly matchGain: ReadonlySignal<number>;
  readonly #own: LiveSound;
  readonly #second: LiveSound;
  #going = '';

  /** @param asked - what the set on the bench is asked to play, null where it is not heard */
  constructor(own: LiveSound, second: LiveSound, asked: ReadonlySignal<Asked | null>, shown: ReadonlySignal<StationResult | null>) {
    this.#own = own;
    this.#second = second;
    this.matchGain = computed(() => {
      const [here, there] = [shown.value?.verdict.level, this.other.value?.station?.verdict.level];
      return here == null || there == null ? 0 : here - there;
    });
    // the other plays while the one on the bench does, with the same programme and choices
    effect(() => {
      const [playing, other, play] = [own.live.value.kind === 'playing', this.other.value, asked.value];
      const gain = (play?.makeUpGain ?? 0) + (this.matched.value ? this.matchGain.value : 0);
      const angle = other?.station?.angle ?? null;
      untracked(() => {
        if (!playing || !other || !play || angle === null) {
          second.stop();
          this.#mute();
          return;
        }
        const { document, files } = other.set;
        const wanted = { ...play, text: JSON.stringify(document), files, angle, makeUpGain: 0 };
        // a turn of the own dial is nothing to the other set
        const key = JSON.stringify(wanted);
        if (key === this.#going && second.live.value.kind === 'playing') second.setGain(gain);
        else {
          this.#going = key;
          void second.start({ ...wanted, makeUpGain: gain }).then(() => this.#mute());
        }
      });
    });
  }

  hear(other: boolean): void {
    this.hearsOther.value = other;
    this.#mute();
  }

  #mute(): void {
    const other = this.hearsOther.peek() && this.other.peek() !== null;
    this.#own.mute(other);
    this.#second.mute(!other);
  }
}
