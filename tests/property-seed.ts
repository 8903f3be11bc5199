import fc from 'fast-check';

/** One seed for all property tests, so that a clean checkout passes or fails the same way twice; PROPERTY_SEED tries others. */
fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 20261125) });
