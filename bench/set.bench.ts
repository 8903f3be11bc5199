import { spawnSync } from 'node:child_process';
import { assemble, bestDial, evaluate, standAt } from '#engine';
import { listener, place, set, station } from '../tests/unit/chain/base-set.ts';

/** Median time of one call [s], after warming up. */
function median(call: () => void, rounds = 400): number {
  for (let k = 0; k < rounds; k++) call();
  const times = Array.from({ length: rounds }, () => {
    const t = performance.now();
    call();
    return (performance.now() - t) / 1e3;
  }).sort((a, b) => a - b);
  return times[rounds >> 1]!;
}

/** A complete set evaluated steadily, aerial known; the search of the dial; and the command line's cold start. */
export async function run(): Promise<void> {
  const alone = standAt(place(), assemble(set, listener));
  const six = standAt(
    place(...[0, 0.4, -0.8, 1.1, 2.3, -3].map((mhz, k) => station({ name: `station ${k}`, frequency: 98e6 + mhz * 1e6 }))),
    assemble(set, listener),
  );
  const dial = bestDial(alone, 0);
  if ('missing' in dial) throw new Error('the set of this benchmark should reach its station');
  const { angle } = dial.points[0]!;
  const one = median(() => void evaluate(alone, 0, angle));
  const withFive = median(() => void evaluate(six, 0, angle));
  const search = median(() => void bestDial(alone, 0), 100);
  const models = median(() => void assemble(set, listener), 100);
  const ms = (s: number): string => `${(1e3 * s).toFixed(3)} ms`;
  console.log(
    `one complete set, one station     ${ms(one)}   ${(1 / one).toFixed(0)} a second   target 0.2 ms: ${(one / 0.2e-3).toFixed(2)} of it`,
  );
  console.log(`the same with five neighbours     ${ms(withFive)}   ${(withFive / one).toFixed(2)} times one station`);
  console.log(`best dial, both sides             ${ms(search)}   ${(search / one).toFixed(1)} evaluations`);
  console.log(`models of a set made anew         ${ms(models)}   ${(models / one).toFixed(1)} evaluations`);
  const start = (args: readonly string[]): number => {
    const times = Array.from({ length: 7 }, () => {
      const t = performance.now();
      spawnSync(process.execPath, [...args]);
      return (performance.now() - t) / 1e3;
    }).sort((a, b) => a - b);
    return times[3]!;
  };
  const bare = start(['-e', '0']);
  const help = start(['dist/cli/earshot.mjs', '--version']);
  const first = start(['dist/cli/earshot.mjs', 'detector', 'examples/dipole-and-small-coil.json']);
  console.log(`command line, cold to first line  ${ms(help)} (version), ${ms(first)} (a stage)   target 300 ms; bare Node ${ms(bare)}`);
}
