import type { Desk } from './desk.ts';

/** Hands out the files that a document may refer to; throws where there is none of a name. */
export function filesAtHand(desk: Desk): (name: string) => string {
  const files = desk.bench.files.value;
  return (name) => {
    const text = Object.hasOwn(files, name) ? files[name] : undefined;
    if (text === undefined) throw new Error('there is no such file at hand');
    return text;
  };
}
