import { InvalidArgumentError } from 'commander';

export function readPort(text: string): number {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65535) throw new InvalidArgumentError('A port is a whole number from 0 (any free one) to 65535.');
  return port;
}
