// Asks before listening beyond this computer, and prints the address and its code to be scanned.

import { createInterface } from 'node:readline/promises';
import QRCode from 'qrcode';
import { NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { networkAddresses } from '../server/network.ts';

export const WARNING =
  'Anyone on that network can read and write the record, and what is sent can be read on the ' +
  `way (plain HTTP); ${NAMES_NOT_PROVED}.`;

const yes = (answer: string): boolean => /^\s*y(es)?\s*$/i.test(answer);

/** Without a terminal the answer is no: nobody is there to say yes. */
export async function askNetwork(stated: boolean | undefined): Promise<boolean> {
  if (stated !== undefined) return stated;
  if (process.stdin.isTTY !== true || process.stdout.isTTY !== true) return false;
  if (networkAddresses().length === 0) return false;
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  try {
    return yes(await terminal.question(`${WARNING}\nListen on this network too? y/N `));
  } catch {
    return false; // Ctrl-C or Ctrl-D at the question.
  } finally {
    terminal.close();
  }
}

/** What is printed beside `localhost`: each address, and a code for the first. */
export async function networkLines(
  addresses: readonly string[],
  port: number,
): Promise<readonly string[]> {
  const [first] = addresses;
  if (first === undefined) return ['No network: this computer has no address beside localhost.'];
  const urls = addresses.map((address) => `http://${address}:${port}`);
  const code = await QRCode.toString(`http://${first}:${port}`, {
    // Colours of its own where they can be set: a code in the terminal's may come out inverted.
    ...(process.stdout.isTTY === true ? { type: 'terminal', small: true } : { type: 'utf8' }),
    errorCorrectionLevel: 'M',
  });
  const phones = 'A phone there has no start without signal: not a secure connection.';
  return [...urls.map((url) => `On this network: ${url}`), code.trimEnd(), WARNING, phones];
}
