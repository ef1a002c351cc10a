// Acts already made on another device: their shape and hash are checked, then they are kept.

import { z } from 'zod';
import type { Archive, Received } from '../archive/contract.ts';
import { limits } from '../limits.ts';
import { canonicalBytes } from '../quantity/sha.ts';

const sentSchema = z.strictObject({
  acts: z
    .array(z.looseObject({ hash: z.string().regex(/^[0-9a-f]{64}$/) }))
    .max(limits.server.actsAtOnce),
});

export const isExchange = (body: unknown): boolean =>
  typeof body === 'object' && body !== null && 'acts' in body;

export const readSent = (body: unknown) => sentSchema.safeParse(body);

type Sent = z.infer<typeof sentSchema>;

/**
 * Nothing that was recorded is refused for what it says: the fold makes findings of it. Only bytes
 * that are no act of this vessel, or not what their hash claims, are not taken.
 */
export async function receiveActs(archive: Archive, { acts }: Sent): Promise<Received> {
  const unreadable: { hash: string; why: string }[] = [];
  const given = acts.flatMap(({ hash, signature: _signature, ...content }) => {
    try {
      return [{ hash, bytes: canonicalBytes(content) }];
    } catch (error) {
      unreadable.push({ hash, why: error instanceof Error ? error.message : String(error) });
      return [];
    }
  });
  const { taken, known, refused } = await archive.receive(given);
  return { taken, known, refused: [...refused, ...unreadable] };
}
