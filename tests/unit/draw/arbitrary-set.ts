import fc from 'fast-check';
import type { SetDescription } from '#engine';
import { arbitraryAerial, arbitraryDetector, arbitraryPhones, arbitraryTank } from '../set-file/arbitrary.ts';

/** Any set that a file can describe. */
export const arbitrarySet: fc.Arbitrary<SetDescription> = arbitraryAerial.chain((aerial) =>
  fc.record({
    aerial: fc.constant(aerial),
    tank: arbitraryTank(aerial.kind === 'coil'),
    detector: arbitraryDetector,
    phones: arbitraryPhones,
  }),
);
