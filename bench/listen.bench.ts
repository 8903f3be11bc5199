import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  assemble,
  bestDial,
  C,
  type DescribingFunction,
  type EnvelopeSource,
  fullToneDrive,
  listen,
  modulator,
  type Reception,
  type RestBias,
  receiverCircuit,
  SetInTime,
  SOUND_RATE,
  speechNoise,
  standAt,
  toneAudio,
  weaken,
} from '#engine';
import { type AudioStepping, audioStepping } from '../src/engine/listen/audio-stepping.ts';
import { type Carrier, restAudio, restMode } from '../src/engine/listen/detector-loop.ts';
import { DetectorSolver } from '../src/engine/listen/detector-solver.ts';
import { EmfFeed } from '../src/engine/listen/emf-feed.ts';
import { lookAhead } from '../src/engine/listen/emf-filter.ts';
import { conduct, modesOf } from '../src/engine/listen/modal-circuit.ts';
import { OneDetectorLoop } from '../src/engine/listen/one-detector-loop.ts';
import { onePortFits } from '../src/engine/listen/one-port-fit.ts';
import { layout, type RadioTuning, radioEquations } from '../src/engine/listen/radio-tuning.ts';
import { CELL_SIZE, ResponseMap } from '../src/engine/listen/response-map.ts';
import { BLOCK, StationSum } from '../src/engine/listen/station-sum.ts';
import { Tuner } from '../src/engine/listen/tuned-set.ts';
import { listener, place, set, station } from '../tests/unit/chain/base-set.ts';
import { referenceCircuit } from '../tests/unit/listen/reference-circuits.ts';
import { fmTone, harmonics } from '../tests/unit/listen/signals.ts';

const OFFSETS = [0, 0.4e6, -0.8e6, 1.1e6, -1.2e6, 1.2e6];
/** Neighbours below the wanted station in field [dB]. */
const BELOW = [0, 6, 3, 10, 0, 10];

const receptionOf = (count: number): Reception => {
  const r = standAt(
    place(...OFFSETS.slice(0, count).map((o, k) => station({ name: `station ${k}`, frequency: 98e6 + o }))),
    assemble(set, listener),
  );
  return BELOW.slice(0, count).reduce((all, below, k) => weaken(all, k, -below), r);
};

/** Envelopes that cost next to nothing: a second of a tone, made beforehand and gone round. */
function prepared(rate: number, offset: number, k: number): EnvelopeSource {
  const size = 1 << 16;
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  const tone = ((k + 3) * rate) / size;
  const turns = Math.round((offset * size) / rate);
  for (let n = 0; n < size; n++) {
    const p = (40e3 / tone) * Math.sin((2 * Math.PI * n * (k + 3)) / size) + (2 * Math.PI * ((n * turns) % size)) / size;
    re[n] = Math.cos(p);
    im[n] = Math.sin(p);
  }
  let at = 0;
  return {
    rate,
    next(a, b) {
      // blocks divide the size
      a.set(re.subarray(at, at + a.length));
      b.set(im.subarray(at, at + b.length));
      at = (at + a.length) % size;
    },
  };
}

const KINDS = ['prepared envelopes', 'modulated tones', 'modulated speech noise'] as const;

function listening(count: number, kind: (typeof KINDS)[number], seconds: number, target: number): void {
  const r = receptionOf(count);
  const dial = bestDial(r, 0);
  if ('missing' in dial) throw new Error('the set of this benchmark should reach its station');
  const { modulation } = r.signals[0]!.received.station;
  const heard = listen(r, {
    station: 0,
    angle: dial.points[0]!.angle,
    broadcast: (k, rate, offset) => {
      if (kind === 'prepared envelopes') return { source: prepared(rate, offset, k), turned: true };
      const tone = 400 + 100 * k;
      const source =
        kind === 'modulated tones'
          ? modulator(toneAudio([{ frequency: tone, amplitude: 0.6 }]), modulation, rate, {
              drive: fullToneDrive(tone, modulation),
              offset,
            })
          : modulator(speechNoise(k + 1), modulation, rate, { drive: { kind: 'ridden', level: 0 }, offset });
      return { source, turned: true };
    },
  });
  const block = new Float64Array(4800);
  for (let k = 0; k < 10; k++) heard.set.process(block);
  const start = performance.now();
  const before = process.cpuUsage();
  for (let k = 0; k < (seconds * SOUND_RATE) / block.length; k++) heard.set.process(block);
  const took = (performance.now() - start) / 1e3;
  // on a machine that others use too the time of the core itself is the steadier figure
  const spent = process.cpuUsage(before);
  const core = (spent.user + spent.system) / 1e6;
  const { failures, fallbacks } = heard.set.report();
  const folding = heard.folding === null ? '' : `, beats fold back ${heard.folding.toFixed(0)} dB down at most`;
  console.log(
    `${count} station${count > 1 ? 's' : ''}, ${kind.padEnd(22)} ${String(seconds).padStart(2)} s in ${took.toFixed(2)} s: ${(seconds / took).toFixed(1).padStart(5)} times real time, ${(seconds / core).toFixed(1).padStart(5)} by the processor's own time   ${((1e9 * core) / seconds / heard.rate).toFixed(0).padStart(4)} ns a sample at ${(heard.rate / 1e6).toFixed(3)} MHz   target ${target}   failures ${failures}, fallbacks ${fallbacks}${folding}`,
  );
}

const RATE = 480_000;
const CARRIER = 98e6;

/** The set of the benchmark, tuned, with its parts laid open. */
function laidOpen() {
  const r = receptionOf(1);
  const dial = bestDial(r, 0);
  if ('missing' in dial) throw new Error('the set of this benchmark should reach its station');
  const signal = r.signals[0]!;
  const circuit = receiverCircuit(r.receiver, signal.arrival);
  const audio = audioStepping(circuit.audio, RATE);
  const { angle } = dial.points[0]!;
  const fits = onePortFits(circuit.radio(angle, CARRIER).source.impedance!, CARRIER, 128e3);
  const stations = [{ name: 'wanted', frequency: CARRIER, emf: signal.emf, halfWidth: 128e3, source: fmTone(RATE, 1000, 75e3) }];
  const sampling = { reference: CARRIER, rate: RATE, bands: [{ middle: 0, half: 128e3 }], taps: 8 };
  const tuner = new Tuner(circuit, fits, sampling, stations, audio.steady);
  return { circuit, audio, tuner, tuned: tuner.at(angle), stations };
}

/** The loop alone, from the same input and the same map of answers, in TypeScript and in C. */
function besideC(): void {
  const { circuit, audio, tuned, stations } = laidOpen();
  const { tuning, bias } = tuned;
  const samples = 96_000;
  const rounds = 200;
  const sum = new StationSum(stations, CARRIER, RATE, 0, null, tuning.gains);
  const [carrier] = sum.before(lookAhead(tuning.taps) + 1);
  const feed = new EmfFeed(sum, tuning.taps, 1);
  const gather = (): Float64Array => new Float64Array(samples);
  const [feedRe, feedIm, emfRe, emfIm] = [gather(), gather(), gather(), gather()];
  for (let n = 0; n < samples; n += BLOCK) {
    feed.next(tuning);
    feedRe.set(feed.feedRe[0]!, n);
    feedIm.set(feed.feedIm[0]!, n);
    emfRe.set(feed.emfRe.subarray(0, BLOCK), n);
    emfIm.set(feed.emfIm.subarray(0, BLOCK), n);
  }
  const carriers = [{ angle: 0, emf: carrier! }];
  const loop = new OneDetectorLoop(circuit.laws[0]!, audio);
  loop.tune(tuning, bias);
  const input = { emfRe, emfIm, feedRe: [feedRe], feedIm: [feedIm] };
  const ear = gather();
  const blocks = Array.from({ length: samples / BLOCK }, (_, b) => ear.subarray(b * BLOCK, (b + 1) * BLOCK));
  let best = Number.POSITIVE_INFINITY;
  for (let k = 0; k < rounds; k++) {
    loop.rest(bias, carriers);
    const start = performance.now();
    // in the engine's blocks
    blocks.forEach((block, b) => {
      loop.run(input, b * BLOCK, BLOCK, block);
    });
    best = Math.min(best, (performance.now() - start) / 1e3);
  }
  const ours = ear.reduce((s, v) => s + v, 0);
  const here = (1e9 * best) / samples;
  const there = inC(laidOut(tuning, bias, audio, circuit.laws[0]!, carriers, [feedRe, feedIm, emfRe, emfIm], rounds));
  console.log(
    `the detectors' loop alone                    ${here.toFixed(1)} ns a sample; ${there === null ? 'gcc is not on this machine' : `in C, gcc -O3: ${there.time.toFixed(1)} ns, ${(here / there.time).toFixed(2)} times as fast; the sums differ by ${Math.abs(there.sum / ours - 1).toExponential(1)}`}`,
  );
}

/** Everything the C program reads. */
function laidOut(
  tuning: RadioTuning,
  bias: RestBias,
  audio: AudioStepping,
  law: DescribingFunction,
  carriers: readonly Carrier[],
  input: readonly Float64Array[],
  rounds: number,
): Float64Array[] {
  const at = layout(tuning.modes, 1, tuning.taps);
  const c = tuning.numbers;
  if (tuning.modes !== 2 || audio.modes !== 2 || audio.realModes !== 2) throw new Error('the C program has two modes on either side');
  const coefficients = new Float64Array(32);
  const y = new Float64Array(2);
  restAudio(audio, bias.currents, y, new Float64Array(2));
  for (const k of [0, 1]) {
    const o = k * at.stride;
    coefficients.set([c[o]!, c[o + 1]!, c[o + at.source]!, c[o + at.source + 1]!, c[o + at.outOf]!, c[o + at.outOf + 1]!], 6 * k);
    coefficients.set([audio.decayRe[k]!, audio.outRe[k]!, audio.earRe[k]!], 16 + 3 * k);
    coefficients[23 + k] = y[k]!;
    const z = restMode(carriers, c[o]!, c[o + 1]!, c[o + at.source]!, c[o + at.source + 1]!);
    coefficients.set([z.re, z.im], 25 + 2 * k);
  }
  coefficients.set(c.subarray(at.past, at.past + 4), 12);
  coefficients[22] = audio.direct[0]!;
  const solver = new DetectorSolver(law);
  solver.between(c[at.zeta]!, c[at.zeta + 1]!, tuning.conductances[0]!, audio.within[0]!);
  const before = bias.outputs[0]! - audio.within[0]! * bias.currents[0]!;
  const map = new ResponseMap(solver, bias.amplitudes[0]!, before);
  const firstRow = Math.floor((0.4 * bias.amplitudes[0]!) ** 2 * map.perSquare);
  const firstColumn = Math.floor(0.8 * before * map.perStep);
  const rows = Math.ceil((1.6 * bias.amplitudes[0]!) ** 2 * map.perSquare) - firstRow;
  const columns = Math.ceil(0.4 * before * map.perStep);
  const offsets = new Float64Array(rows * columns);
  const rest = new Float64Array(4 * columns);
  for (let column = 0; column < columns; column++) {
    const strip = map.strip(firstColumn + column);
    rest.set(strip.rest, 4 * column);
    for (let row = 0; row < rows; row++)
      for (let visit = 0; visit < 64; visit++) offsets[row * columns + column] = Math.max(0, map.find(strip, firstRow + row));
  }
  const cells = map.cells.subarray(0, map.made * CELL_SIZE);
  const head = Float64Array.of(input[0]!.length, rows, columns, firstRow, firstColumn, cells.length, map.perStep, rounds, map.perSquare);
  return [head, coefficients, offsets, rest, cells, ...input];
}

function inC(parts: readonly Float64Array[]): { time: number; sum: number } | null {
  const folder = mkdtempSync(join(tmpdir(), 'listen-loop-'));
  try {
    const program = join(folder, 'loop');
    if (spawnSync('gcc', ['-O3', '-o', program, 'bench/listen-loop.c', '-lm']).status !== 0) return null;
    const data = join(folder, 'data');
    writeFileSync(data, Buffer.concat(parts.map((p) => Buffer.from(p.buffer, p.byteOffset, p.byteLength))));
    const run = spawnSync(program, [data], { encoding: 'utf8' });
    if (run.status !== 0) throw new Error('the C program failed');
    const [time, sum] = run.stdout.trim().split(' ').map(Number);
    return { time: time!, sum: sum! };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The same equations by SciPy's LSODA: the tolerance at which it is as accurate as we are, against the finest. */
function besideLsoda(): void {
  const tone = 1000;
  const deviation = 75e3;
  const emf = 0.35;
  const carrier = 100.1e6;
  const w0 = 2 * Math.PI * carrier;
  const detector = { saturationCurrent: 5e-7, ideality: 1.05, seriesResistance: 0, temperature: 300 };
  const load = { resistance: 50e3, capacitance: 200e-12 };
  const circuit = referenceCircuit({
    source: { resistance: 30e3 },
    tank: { kind: 'parallel', inductance: 100e-9, capacitance: 25.45e-12, coilResistance: 0.314 },
    detector,
    load,
  });
  const station = {
    name: 'a',
    frequency: carrier,
    emf: emf / Math.SQRT2,
    halfWidth: deviation + 2 * tone,
    source: fmTone(RATE, tone, deviation),
  };
  const audio = audioStepping(circuit.audio, RATE);
  const sampling = { reference: carrier, rate: RATE, bands: [{ middle: 0, half: deviation }], taps: 8 };
  const { bias } = new Tuner(circuit, [null], sampling, [station], audio.steady).at(0);
  const equations = radioEquations(circuit.radio(0, carrier), null);
  conduct(equations, 1, bias.conductances[0]!);
  const all = modesOf(equations, { re: 0, im: w0 }, { re: 1e-3 * w0, im: w0 }, 1e3 * RATE)!;
  // the mode that the engine steps too; what the others give stands still
  const near = all.poles.map((p, k) => ({ p, k })).filter(({ p }) => C.abs(p) < 0.1 * w0);
  const still = (input: number) =>
    all.poles.reduce(
      (sum, p, k) => (near.some((n) => n.k === k) ? sum : C.sub(sum, C.div(C.mul(all.outOf[k]![0]!, all.into[k]![input]!), p))),
      all.rest[0]![input]!,
    );
  const pair = (z: { re: number; im: number }): number[] => [z.re, z.im];
  const seconds = 0.02;
  const s = new SetInTime(circuit, [station], { reference: carrier, rate: RATE, angle: 0 });
  const x = new Float64Array(SOUND_RATE * seconds);
  s.process(new Float64Array(SOUND_RATE * seconds));
  s.process(x);
  const ours = harmonics(x.subarray(x.length / 2), SOUND_RATE, tone, 4)[1]!;
  const long = new Float64Array(SOUND_RATE);
  const start = performance.now();
  for (let k = 0; k < 10; k++) s.process(long);
  const here = (performance.now() - start) / 1e4;
  const run = spawnSync('python3', ['bench/listen-lsoda.py'], {
    input: JSON.stringify({
      poles: near.map(({ p }) => pair(p)),
      source: near.map(({ k }) => pair(all.into[k]![0]!)),
      into: near.map(({ k }) => pair(all.into[k]![1]!)),
      outOf: near.map(({ k }) => pair(all.outOf[k]![0]!)),
      restSource: pair(still(0)),
      restInto: pair(still(1)),
      audioPoles: [-1 / (load.resistance * load.capacitance)],
      audioGain: [1 / load.capacitance],
      audioDirect: 0,
      saturation: detector.saturationCurrent,
      slope: (detector.ideality * 1.380649e-23 * detector.temperature) / 1.602176634e-19,
      conductance: bias.conductances[0],
      current: bias.currents[0],
      emf,
      tone,
      deviation,
      duration: seconds,
      tolerances: [1e-3, 1e-4, 1e-5, 1e-6, 1e-8],
    }),
    encoding: 'utf8',
    env: { ...process.env, OPENBLAS_NUM_THREADS: '1' },
  });
  if (run.status !== 0) {
    console.log(`the same equations by LSODA: no python3 with SciPy on this machine`);
    return;
  }
  const lines = run.stdout
    .trim()
    .split('\n')
    .map((l) => l.split(' ').map(Number) as [number, number, number]);
  const exact = lines.at(-1)![2];
  const decibels = (a: number): number => Math.abs(20 * Math.log10(a / exact));
  const equal = lines.find((l) => decibels(l[2]) <= decibels(ours)) ?? lines.at(-1)!;
  console.log(
    `the same equations by SciPy's LSODA          ${equal[1].toFixed(2)} s for a second at a relative tolerance of ${equal[0]} (fundamental off by ${decibels(equal[2]).toExponential(1)} dB); here ${here.toFixed(4)} s (off by ${decibels(ours).toExponential(1)} dB): ${(equal[1] / here).toFixed(0)} times as fast   target 200`,
  );
}

/** What a turn of the dial costs: a new tuning, worked out every 4 ms while it turns. */
function tuning(): void {
  const { tuner, tuned } = laidOpen();
  const rounds = 300;
  for (let k = 0; k < rounds; k++) tuner.at(tuned.angle + 1e-5 * k);
  const start = performance.now();
  for (let k = 0; k < rounds; k++) tuner.at(tuned.angle + 1e-5 * k);
  const took = (performance.now() - start) / rounds;
  console.log(
    `a new tuning of the dial                     ${took.toFixed(2)} ms, ${(4 / took).toFixed(1)} times as often as a turning dial asks for one`,
  );
}

/** A set in time: one station and six, the loop beside C, the equations beside LSODA, a new tuning. */
export async function run(): Promise<void> {
  for (const kind of KINDS) listening(1, kind, 60, 20);
  for (const kind of KINDS) listening(6, kind, 20, 3);
  besideC();
  besideLsoda();
  tuning();
}
