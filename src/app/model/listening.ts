import { effect, signal, untracked } from '@preact/signals';
import type { LiveSound } from '../audio/live-sound.ts';
import type { Play, Sent } from '../audio/protocol.ts';
import type { Workbench } from './workbench.ts';

/** What a person chose to hear, and the sound of the set on the bench. */
export class Listening {
  readonly sound: LiveSound;
  readonly sent = signal<Sent>({ kind: 'own' });
  readonly with = signal<Play['with']>({ neighbours: false, room: true, hearingLimit: true, noise: true });
  /** stated on the screen, never chosen by the sound [dB] */
  readonly makeUpGain = signal(20);
  readonly notice = signal<string | null>(null);
  readonly #bench: Workbench;

  constructor(bench: Workbench, sound: LiveSound) {
    this.#bench = bench;
    this.sound = sound;
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

  async play(): Promise<void> {
    const angle = this.#angle();
    const station = this.#bench.shown.value;
    if (!station || angle === null) {
      this.notice.value = 'The dial does not reach this station, so there is nothing to hear.';
      return;
    }
    this.notice.value = null;
    const { text, files = {} } = this.#bench.document.value;
    await this.sound.start({
      text,
      files,
      station: station.name,
      angle,
      sent: this.sent.value,
      with: this.with.value,
      makeUpGain: this.makeUpGain.value,
    });
  }

  #angle(): number | null {
    return this.#bench.hand.value ?? this.#bench.shown.value?.angle ?? null;
  }
}
