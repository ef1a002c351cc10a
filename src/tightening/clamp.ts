// The clamp that a joint needs of each bolt: pressure, seating of the seal, what embedding takes.

import type { Source } from '../quantity/types.ts';

export type ClampCase = {
  /** Above what stands outside. */
  readonly pressureMPa: number;
  /** On which it pushes: to where the seal seals. */
  readonly areaMm2: number;
  /** On the whole seal while the pressure is on. */
  readonly seatingKN: number;
  readonly bolts: number;
  /** Of each bolt. */
  readonly embeddingLossKN: number;
};

export const clampNeededKN = (one: ClampCase): number =>
  ((one.pressureMPa * one.areaMm2) / 1_000 + one.seatingKN) / one.bolts + one.embeddingLossKN;

export type Roughness = 'Rz under 10' | 'Rz 10 to 40' | 'Rz 40 to 160';

export const embeddingSource: Source = {
  kind: 'published',
  title: 'VDI 2230 Part 1, guide values of embedding, axial load',
  edition: '2003, as quoted by a public data file',
  place: 'Table 5',
};

/** Micrometres in the thread, under head or nut, and at each joint face between. */
export const embeddingRows: Readonly<Record<Roughness, readonly [number, number, number]>> = {
  'Rz under 10': [3, 2.5, 1.5],
  'Rz 10 to 40': [3, 3, 2],
  'Rz 40 to 160': [3, 4, 3],
};

/** Of a through bolt: thread, head and nut, and the faces between the parts. */
export const embeddingUm = (roughness: Roughness, faces: number): number => {
  const [thread, head, face] = embeddingRows[roughness];
  return thread + 2 * head + faces * face;
};
