// The addresses under which this computer is known on the networks it is joined to.

import { networkInterfaces } from 'node:os';

/** IPv4 only: they are short enough to be typed, and a name could be pointed here by anyone. */
export function networkAddresses(found = networkInterfaces()): readonly string[] {
  return Object.values(found)
    .flatMap((each) => each ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address)
    .filter((address, i, all) => !address.startsWith('169.254.') && all.indexOf(address) === i);
}
