/** Where the files that come along lie in the built app. */
import sentences from '../../assets/programmes/sentences.wav?url';

/** Recorded programmes by name. */
export const programmeAddresses: Readonly<Record<string, string>> = { sentences };

const examples = import.meta.glob<string>('../../examples/*.json', { query: '?url', import: 'default', eager: true });

/** Set and place files by the name they bear in `examples/`: those that a set file refers to are found by that name. */
export const exampleAddresses: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(examples).map(([path, address]) => [path.slice(path.lastIndexOf('/') + 1), address]),
);
