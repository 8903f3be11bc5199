import { expect, test } from 'vitest';
import {
  aWeightedLevel,
  BANDS,
  type EarDescription,
  EarInTime,
  type EarOptions,
  GivenError,
  hear,
  hearingLimitLevels,
  leakLoss,
  type PhonesModel,
  phonesModel,
  REFERENCE_SOUND_PRESSURE,
  roomLevels,
  SII_BANDWIDTH,
  SOUND_BANDS,
} from '#engine';
import { readEarpiece } from './earpieces.ts';
import { thirdOctaves } from './third-octaves.ts';

const RATE = 48_000;
const rooms: readonly EarDescription['room'][] = [
  { kind: 'a-weighted', level: 35 },
  { kind: 'noise-criterion', rating: 30 },
  {
    kind: 'bands',
    bands: [
      { frequency: 250, level: 40 },
      { frequency: 500, level: 35 },
      { frequency: 1000, level: 41 },
    ],
  },
];
const loss: EarDescription['hearingLevel'] = [
  { frequency: 500, level: 10 },
  { frequency: 4000, level: 45 },
];
const model = (name: string): PhonesModel => phonesModel({ bypass: 1e-9, earpiece: readEarpiece(name) });
const over = (f: (frequency: number) => number): Float64Array => Float64Array.from(BANDS, f);
const at = (levels: Float64Array, band: number): number => levels[SOUND_BANDS.indexOf(band)]!;
const soundOf = (phones: PhonesModel, programme: Float64Array) => ({
  programme,
  disturbance: over(() => -200),
  attenuation: over((f) => phones.attenuation(f)),
  threshold: over((f) => phones.threshold(f)),
  ears: phones.ears,
});
/** A receiver as far as the sound half asks for one. */
const receiver = (name: string, room = rooms[0]!, hearingLevel: EarDescription['hearingLevel'] = []) => ({
  phones: model(name),
  listener: { ear: { room, hearingLevel }, programme: { tone: 1000, level: -10 } },
});
const silent = (options: EarOptions, name = 'magnetic-headset-2000', seconds = 60): Float64Array => {
  const sound = new Float64Array(seconds * RATE);
  new EarInTime(receiver(name, rooms[0], loss), options).process(sound, sound);
  return sound;
};

test('identity: the room has the levels that `hear` has, band by band', () => {
  for (const name of ['crystal-earplug', 'magnetic-headset-2000', 'dynamic-32', 'hearing-aid-insert'])
    for (const room of rooms) {
      const phones = model(name);
      const { roomNoise } = hear(
        { room, hearingLevel: [] },
        soundOf(
          phones,
          over(() => 40),
        ),
      );
      const levels = roomLevels(room, phones);
      BANDS.forEach((f, b) => {
        expect(at(levels, f), `${name}, ${f} Hz`).toBeCloseTo(roomNoise[b]!, 9);
      });
    }
});

test('identity: a band right at the threshold of `hear` is as just audible over the limit of hearing taken as an outside noise', () => {
  // a lone band of the noise, given to `hear` as disturbance, must leave the threshold in that band where it is: level = masking + critical ratio
  for (const name of ['crystal-earplug', 'magnetic-headset-2000', 'hearing-aid-insert'])
    for (const hearingLevel of [[], loss]) {
      const phones = model(name);
      const levels = hearingLimitLevels(hearingLevel, phones);
      BANDS.forEach((f) => {
        const only = over((g) => (g === f ? 50 : -200));
        // how far 50 dB is over threshold, in a room that is not there
        const quiet = hear({ room: { kind: 'a-weighted', level: -50 }, hearingLevel }, soundOf(phones, only)).overThreshold;
        const programme = over((g) => (g === f ? 50 - quiet : -200));
        const disturbance = over((g) => (g === f ? at(levels, f) : -200));
        const normal = { room: { kind: 'a-weighted', level: -50 } as const, hearingLevel: [{ frequency: 1000, level: -30 }] };
        const { overNoise } = hear(normal, { ...soundOf(phones, programme), disturbance });
        // ANSI S3.5 rounds its bandwidths to 0.01 dB from nominal frequencies
        expect(Math.abs(overNoise), `${name}, ${f} Hz`).toBeLessThan(0.03);
      });
    }
});

test('published: with normal hearing and one ear the limit lies 16.6 dB below the threshold of 1 kHz in each hertz (ISO 389-7, ANSI S3.5 Table 3)', () => {
  // T = 7.5 dB SPL on IEC 60318-1 (ANSI S3.6), CR = 2.4 + 1.7 - (-12.5) = 16.6 dB
  const phones = { threshold: () => 7.5, attenuation: () => 0, ears: 1 as const };
  const spectrum = at(hearingLimitLevels([], phones), 1000) - SII_BANDWIDTH[BANDS.indexOf(1000)]!;
  expect(Math.abs(spectrum - (7.5 - 16.6))).toBeLessThan(0.02);
  expect(at(hearingLimitLevels([], { ...phones, ears: 2 }), 1000) - at(hearingLimitLevels([], phones), 1000)).toBeCloseTo(-1.7, 12);
});

test('limit: what lies above the bands of ANSI S3.5 Table 3, where little is to be hidden, is not what one hears of the noise', () => {
  for (const name of ['crystal-earplug', 'magnetic-headset-2000', 'dynamic-32', 'hearing-aid-insert']) {
    const levels = hearingLimitLevels([], model(name));
    const weighted = (top: number): number => {
      const bands = SOUND_BANDS.filter((f) => f <= top);
      return aWeightedLevel(
        bands,
        bands.map((f) => at(levels, f)),
      );
    };
    // with the field's own threshold up to 16 kHz (40.2 dB, ISO 389-7) it would add 14 dB on a supra-aural earpiece (numpy, from the two tables)
    expect(weighted(16_000) - weighted(8000), name).toBeLessThan(3);
    // up to where FM ends it goes on as the free field's threshold does: 12.3 - 12.6 dB (ISO 389-7), in a band 2 dB wider
    expect(at(levels, 12_500) - at(levels, 8000), name).toBeCloseTo(12.3 - 12.6 + 2, 1);
  }
});

/**
 * A minute of Gaussian noise: the level of a band of width B is known to 10 log10(1 + 1/sqrt(B T)) dB, one standard deviation (J. S. Bendat, A. G. Piersol,
 * Random Data, 4th ed. (2010), sec. 8.3.1, from memory): 0.12 dB at 100 Hz, so that 0.5 dB are four of them there and more above; below, four of them
 * beside 0.35 dB for the filter.
 */
const allowed = (band: number): number => (band >= 100 ? 0.5 : 0.35 + 4 * 10 * Math.log10(1 + 1 / Math.sqrt(0.23 * band * 60)));

test('limit: third octaves measured over a minute of the room alone, and of the limit of hearing alone', () => {
  const cases: readonly (readonly [string, EarOptions, (phones: PhonesModel) => Float64Array])[] = [
    ['magnetic-headset-2000', { seed: 1, room: true, hearingLimit: false }, (phones) => roomLevels(rooms[0]!, phones)],
    ['crystal-earplug', { seed: 2, room: false, hearingLimit: true }, (phones) => hearingLimitLevels(loss, phones)],
  ];
  for (const [name, options, wanted] of cases) {
    const levels = wanted(model(name));
    const measured = thirdOctaves(silent(options, name), SOUND_BANDS);
    SOUND_BANDS.forEach((f, b) => {
      expect(Math.abs(measured[b]! - levels[b]!), `${name}, ${f} Hz`).toBeLessThan(allowed(f));
    });
  }
});

test('identity: room and limit are apart from each other, and from any other seed', () => {
  const correlation = (a: Float64Array, b: Float64Array): number => {
    let ab = 0;
    let aa = 0;
    let bb = 0;
    for (let n = 0; n < a.length; n++) {
      ab += a[n]! * b[n]!;
      aa += a[n]! ** 2;
      bb += b[n]! ** 2;
    }
    return ab / Math.sqrt(aa * bb);
  };
  const room = silent({ seed: 7, room: true, hearingLimit: false }, undefined, 10);
  const limit = silent({ seed: 7, room: false, hearingLimit: true }, undefined, 10);
  const other = silent({ seed: 8, room: true, hearingLimit: false }, undefined, 10);
  expect(silent({ seed: 7, room: true, hearingLimit: false }, undefined, 10)).toEqual(room);
  // noise whose power lies below some 200 Hz: over 10 s about 1/sqrt(2 B T) = 0.02; five of that
  expect(Math.abs(correlation(room, limit))).toBeLessThan(0.1);
  expect(Math.abs(correlation(room, other))).toBeLessThan(0.1);
});

test('limit: one volt at 1 kHz is the sensitivity of the earpiece as a level; what is heard is programme and noises, added', () => {
  const name = 'ceramic-earpiece';
  const volts = Float64Array.from({ length: RATE }, (_, n) => Math.SQRT2 * Math.sin((2 * Math.PI * 1000 * n) / RATE));
  const all = new Float64Array(RATE);
  const programme = new Float64Array(RATE);
  new EarInTime(receiver(name), { seed: 3, room: true, hearingLimit: true }).process(volts, all, programme);
  let power = 0;
  for (let n = RATE / 2; n < RATE; n++) power += programme[n]! ** 2;
  const level = 10 * Math.log10(power / (RATE / 2) / REFERENCE_SOUND_PRESSURE ** 2);
  // 98 dB SPL for one volt at 1 kHz stands in the library
  expect(Math.abs(level - 98)).toBeLessThan(0.05);
  const noises = new Float64Array(RATE);
  new EarInTime(receiver(name), { seed: 3, room: true, hearingLimit: true }).process(new Float64Array(RATE), noises);
  for (let n = 0; n < RATE; n += 131) expect(all[n]! - programme[n]!).toBeCloseTo(noises[n]!, 12);
});

test('identity: however the voltage is cut up, the sound is the same to the bit, in place too', () => {
  const volts = Float64Array.from({ length: 70_000 }, (_, n) => Math.sin(n * n * 1e-5));
  const options = { seed: 5, room: true, hearingLimit: true, at: 'ear' } as const;
  const whole = new Float64Array(volts.length);
  const own = new Float64Array(volts.length);
  new EarInTime(receiver('dynamic-32'), options).process(volts, whole, own);
  const cut = volts.slice();
  const ownCut = new Float64Array(volts.length);
  const ear = new EarInTime(receiver('dynamic-32'), options);
  for (let n = 0, size = 1; n < cut.length; n += size, size = (size * 13 + 5) % 4999) {
    const end = Math.min(n + size, cut.length);
    ear.process(cut.subarray(n, end), cut.subarray(n, end), ownCut.subarray(n, end));
  }
  expect(cut).toEqual(whole);
  expect(ownCut).toEqual(own);
});

test('identity: at the ear everything is less by what the gap loses, at the coupler it stands in the threshold', () => {
  const options = { seed: 1, room: true, hearingLimit: true };
  const coupler = new EarInTime(receiver('crystal-earplug'), options);
  const ear = new EarInTime(receiver('crystal-earplug'), { ...options, at: 'ear' });
  SOUND_BANDS.forEach((f, b) => {
    const lost = leakLoss('plug', f);
    expect(coupler.roomLevels![b]! - ear.roomLevels![b]!).toBeCloseTo(lost, 10);
    expect(coupler.hearingLimitLevels![b]! - ear.hearingLimitLevels![b]!).toBeCloseTo(lost, 10);
  });
  const tone = (at: 'coupler' | 'ear', frequency: number): number => {
    const volts = Float64Array.from({ length: 2 * RATE }, (_, n) => Math.sin((2 * Math.PI * frequency * n) / RATE));
    new EarInTime(receiver('crystal-earplug'), { seed: 1, room: false, hearingLimit: false, at }).process(volts, volts);
    let power = 0;
    for (let n = RATE; n < 2 * RATE; n++) power += volts[n]! ** 2;
    return 10 * Math.log10(power);
  };
  for (const f of [100, 400, 1000])
    expect(Math.abs(tone('coupler', f) - tone('ear', f) - leakLoss('plug', f)), `${f} Hz`).toBeLessThan(0.2);
});

test('a seed that is none is refused, and so is an audiogram that is none', () => {
  for (const seed of [-1, 0.5, 2 ** 32, Number.NaN])
    expect(() => new EarInTime(receiver('dynamic-32'), { seed, room: false, hearingLimit: false })).toThrow(GivenError);
  const odd = receiver('dynamic-32', rooms[0], [{ frequency: 1000, level: Number.NaN }]);
  expect(() => new EarInTime(odd, { seed: 1, room: false, hearingLimit: true })).toThrow(GivenError);
});
