import {
  type AudioSource,
  Doubler,
  lowPassKernel,
  type ModulatorOptions,
  modulator,
  PhasorRun,
  type ProgrammeModulation,
  Resampler,
} from '#engine';
import { bytesSource, MemorySink, openWav, WavWriter, wavAudio } from '#wav';

/** Least time of one call [s], after warming up. */
function least(call: () => void, rounds = 60): number {
  for (let k = 0; k < rounds; k++) call();
  let best = Number.POSITIVE_INFINITY;
  for (let k = 0; k < rounds; k++) {
    const t = performance.now();
    call();
    best = Math.min(best, performance.now() - t);
  }
  return best / 1e3;
}

/** Audio that costs nothing: a ramp, left and right apart. */
function ramp(rate: number): AudioSource {
  return {
    rate,
    next(left, right) {
      for (let n = 0; n < left.length; n++) {
        left[n] = (n & 63) / 100;
        right[n] = (n & 31) / 100;
      }
    },
  };
}

const stereo: ProgrammeModulation = { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: true };
const kinds: readonly (readonly [string, ProgrammeModulation])[] = [
  ['FM stereo', stereo],
  ['FM mono', { ...stereo, stereo: false }],
  ['AM', { kind: 'am', depth: 0.8 }],
];
const drive: ModulatorOptions = { drive: { kind: 'fixed', gain: 1 } };

/** Stations in time, a sample of the envelope and a second of programme; their parts; sound files. */
export async function run(): Promise<void> {
  // blocks as a player asks for them, enough at a time that all that is read ahead comes round
  const block = 3000;
  const blocks = 16;
  const count = block * blocks;
  const [re, im] = [new Float64Array(block), new Float64Array(block)];
  const inBlocks = (next: () => void) => (): void => {
    for (let k = 0; k < blocks; k++) next();
  };
  const line = (name: string, seconds: number, samples: number, rate: number): void =>
    console.log(
      `${name.padEnd(44)} ${((seconds / samples) * 1e9).toFixed(2).padStart(7)} ns a sample   ${(samples / rate / seconds).toFixed(0).padStart(5)} times real time`,
    );
  // the same machine's own speed: multiplications and additions one after another over numbers in cache
  const [a, b] = [new Float64Array(1024).fill(1.5), new Float64Array(1024).fill(0.5)];
  let sink = 0;
  const plain = least(() => {
    for (let k = 0; k < 200; k++) for (let n = 0; n < 1024; n += 2) sink += a[n]! * b[n]! + a[n + 1]! * b[n + 1]!;
  });
  console.log(`a product added to a sum, this machine now: ${((plain / 204_800) * 1e9).toFixed(2)} ns${sink === 0 ? '!' : ''}`);
  for (const rate of [1_500_000, 3_000_000])
    for (const [name, modulation] of kinds) {
      const station = modulator(ramp(48_000), modulation, rate, drive);
      line(`${name}, audio 48 kHz, envelope ${rate / 1e6} MS/s`, least(inBlocks(() => station.next(re, im))), count, rate);
    }
  // what is left without the parts that each sample of the envelope costs is what the multiplex costs
  const rate = 1_500_000;
  const station = modulator(ramp(48_000), stereo, rate, drive);
  const whole = least(inBlocks(() => station.next(re, im))) / count;
  const run = new PhasorRun(new Doubler(ramp(192_000), 192_000, 53e3, 90, 1), 384_000, rate, 53e3, 0);
  const turning =
    least(
      inBlocks(() => {
        re.fill(0);
        im.fill(0);
        run.add(re, im, 0, block, 1);
      }),
    ) / count;
  const ns = (s: number): string => (s * 1e9).toFixed(2).padStart(7);
  console.log(`of FM stereo at 1.5 MS/s: audio and multiplex         ${ns(whole - turning)} ns a sample (target 10)`);
  console.log(`                          frequency, phase and phasor ${ns(turning)} ns`);
  const resampler = new Resampler(ramp(44_100), 44_100, 48_000, lowPassKernel(15e3, 19e3, 85), 2);
  line('44.1 to 48 kHz, stereo', least(inBlocks(() => resampler.next(re, im))), count, 48_000);
  const sinkOf = new MemorySink();
  const writer = new WavWriter(sinkOf, { rate: 48_000, channels: 2, encoding: '16-bit' });
  const sound = Float64Array.from({ length: 480_000 }, (_, n) => 0.5 * Math.sin(n));
  line(
    'WAV written, 16 bits, stereo',
    least(() => writer.write(sound, sound), 5),
    sound.length,
    48_000,
  );
  writer.finish();
  const audio = wavAudio(openWav(bytesSource(sinkOf.bytes())), 'repeat');
  line('WAV read, 16 bits, stereo', least(inBlocks(() => audio.next(re, im))), count, 48_000);
}
