import { spawnSync } from 'node:child_process';
import { discretise, impedanceMatrix, LU, layOut, solveWires, type WireShape, type WireStructure, wireAerial } from '#engine';

/** Least and median time of one call [s], after warming up. */
function time(call: () => void, rounds: number): { readonly least: number; readonly median: number } {
  for (let k = 0; k < 3; k++) call();
  const times = Array.from({ length: rounds }, () => {
    const t = performance.now();
    call();
    return (performance.now() - t) / 1e3;
  }).sort((a, b) => a - b);
  return { least: times[0]!, median: times[rounds >> 1]! };
}

/** Ten parallel rods of 31 segments each: 300 unknowns, the feed in the second. */
const SEGMENTS = 31;
const rods: WireStructure = {
  wires: Array.from({ length: 10 }, (_, i) => {
    const half = 0.74 - 0.015 * i;
    return { from: { x: 0.6 * i, y: -half, z: 0 }, to: { x: 0.6 * i, y: half, z: 0 }, diameter: 0.008, metal: 'aluminium' as const };
  }),
  feed: { wire: 1, at: 15 / SEGMENTS },
  loads: [],
  ground: { kind: 'free-space' },
};

const beam: WireShape = {
  kind: 'beam',
  reflector: { length: 1.5, behind: 0.6 },
  driven: { length: 1.42, element: { kind: 'straight' } },
  directors: [{ length: 1.36, ahead: 0.5 }],
  diameter: 0.01,
  metal: 'aluminium',
  polarisation: 'horizontal',
  bearing: 0,
};

/** numpy on the same matrix and right-hand side, one thread: least time [s] and the greatest difference of the solutions, or null without numpy. */
function numpy(
  n: number,
  re: Float64Array,
  im: Float64Array,
  xRe: Float64Array,
  xIm: Float64Array,
): { time: number; difference: number } | null {
  const script = `
import sys, time, numpy as np
n = ${n}
d = np.frombuffer(sys.stdin.buffer.read(), dtype='<f8')
a = d[:n*n].reshape(n, n) + 1j * d[n*n:2*n*n].reshape(n, n)
x = d[2*n*n:2*n*n+n] + 1j * d[2*n*n+n:]
b = np.zeros(n, complex); b[${n} // 2] = 1
times = []
for _ in range(30):
    t = time.perf_counter(); y = np.linalg.solve(a, b); times.append(time.perf_counter() - t)
print(min(times), abs(y - x).max() / abs(y).max())
`;
  const input = Buffer.concat([re, im, xRe, xIm].map((v) => Buffer.from(v.buffer, v.byteOffset, v.byteLength)));
  const threads = { OPENBLAS_NUM_THREADS: '1', MKL_NUM_THREADS: '1', OMP_NUM_THREADS: '1' };
  const run = spawnSync('python3', ['-c', script], { input, env: { ...process.env, ...threads }, encoding: 'utf8' });
  if (run.status !== 0) return null;
  const [least, difference] = run.stdout.trim().split(' ').map(Number);
  return { time: least!, difference: difference! };
}

/** Moment method: 300 unknowns filled and solved, beside numpy; a three-element beam at 41 frequencies; the interpolated source. */
export async function run(): Promise<void> {
  const ms = (s: number): string => `${(1e3 * s).toFixed(2)} ms`;
  const layout = layOut(rods);
  const counts = layout.spans.map((s) => (s.wire !== 1 ? SEGMENTS : s === layout.spans.find((t) => t.wire === 1) ? 15 : SEGMENTS - 15));
  const cold = performance.now();
  solveWires(discretise(rods, layout, counts), 98e6);
  const first = (performance.now() - cold) / 1e3;
  const plan = time(() => void discretise(rods, layout, counts), 9);
  const d = discretise(rods, layout, counts);
  const fill = time(() => void impedanceMatrix(d, 98e6), 9);
  const z = impedanceMatrix(d, 98e6);
  const n = z.size;
  const xRe = new Float64Array(n);
  const xIm = new Float64Array(n);
  const solve = time(() => {
    const re = z.re.slice();
    const im = z.im.slice();
    const pivots = new Int32Array(n);
    xRe.fill(0);
    xIm.fill(0);
    xRe[n >> 1] = 1;
    LU.factor(n, re, im, pivots);
    LU.solve(n, re, im, pivots, xRe, xIm);
  }, 15);
  const operations = (8 / 3) * n ** 3 + 8 * n ** 2;
  const whole = plan.median + fill.median + solve.median;
  console.log(`${n} unknowns, cut and planned        ${ms(plan.median)}`);
  console.log(`${n} unknowns, matrix filled          ${ms(fill.median)}`);
  console.log(`${n} unknowns, solved                 ${ms(solve.median)}   ${(operations / solve.least / 1e9).toFixed(2)} GFLOP/s at best`);
  console.log(
    `${n} unknowns, all of it              ${ms(whole)}   target 150 ms: ${(whole / 0.15).toFixed(2)} of it; the first time, cold, ${ms(first)}`,
  );
  const rival = numpy(n, z.re, z.im, xRe, xIm);
  console.log(
    rival
      ? `numpy's LAPACK, one thread, same matrix ${ms(rival.time)}   ${(operations / rival.time / 1e9).toFixed(1)} GFLOP/s; ours takes ${(solve.least / rival.time).toFixed(1)} times as long; solutions differ by ${rival.difference.toExponential(1)}`
      : 'numpy is not on this machine: no comparison',
  );

  const description = { kind: 'wires', shape: beam, height: 0, ground: { kind: 'free-space' } } as const;
  const frequencies = Array.from({ length: 41 }, (_, i) => 88e6 + i * 0.5e6);
  const small = wireAerial(description).solved(98e6).discretised;
  const each = time(() => {
    for (const f of frequencies) solveWires(small, f);
  }, 5);
  console.log(
    `three-element beam, 41 solutions      ${ms(each.median)}   ${small.mesh.unknowns} unknowns; target 500 ms: ${(each.median / 0.5).toFixed(2)} of it`,
  );
  const arrival = { azimuth: 0.1, elevation: 0.02 };
  const fitted = time(() => {
    const aerial = wireAerial(description);
    for (const f of frequencies) aerial.at(f, arrival);
  }, 5);
  console.log(
    `the same from the description, fitted ${ms(fitted.median)}   joints, convergence test, band and all; ${(each.median / fitted.median).toFixed(1)} times as fast as solving each, which is without those`,
  );
  const aerial = wireAerial(description);
  aerial.prepare(88e6, 108e6);
  aerial.at(98e6, arrival);
  const calls = 20_000;
  const source = time(() => {
    for (let i = 0; i < calls; i++) aerial.at(88e6 + i * 1e3, arrival);
  }, 5);
  console.log(`source at one frequency, band ready    ${((1e6 * source.median) / calls).toFixed(2)} us   target 20 us`);
}
