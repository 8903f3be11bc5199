import { exampleAddresses } from '../shipped-files.ts';

let loaded: Promise<Readonly<Record<string, string>>> | null = null;

/** Texts of the examples by name; loaded once, and anew after a failure. */
export function shippedFiles(): Promise<Readonly<Record<string, string>>> {
  loaded ??= Promise.all(Object.entries(exampleAddresses).map(async ([name, address]) => [name, await textAt(address)] as const))
    .then((entries) => Object.fromEntries(entries))
    .catch((e: unknown) => {
      loaded = null;
      throw e;
    });
  return loaded;
}

async function textAt(address: string): Promise<string> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`);
  return answer.text();
}
