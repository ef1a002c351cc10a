// The blank proof sheet: what must be seen dry and still, at which speed, and the verdict by name.

import type { Pack } from '../pack/types.ts';
import { cautionView, titleBlock } from './block.ts';
import { valueView } from './steps.ts';
import { setPdf } from './typst.ts';

export const proofPdf = (pack: Pack): Uint8Array => setPdf('proof', proofView(pack));

export const proofView = (pack: Pack) => {
  const cautions = pack.steps
    .filter((step) => step.phase === 'prove' || step.phase === 'line-up')
    .flatMap((step) => step.cautions);
  const byHazard = new Map(cautions.map((caution) => [caution.hazard, caution]));
  const joints = new Set(
    pack.steps.filter((step) => step.verb === 'made').map((step) => step.thing.slice(6)),
  );
  return {
    block: titleBlock(pack, 'proof sheet'),
    title: pack.title,
    cautions: [...byHazard.values()].map(cautionView),
    proofs: pack.lists.proofs.map(({ name, what }) => ({ name, what })),
    rotation: pack.rotation,
    flow: pack.flowSeenAt,
    columns: ['still, under pressure', ...pack.speeds],
    speeds: pack.speeds.length,
    joints: [...joints].map((id) => pack.facts.joints[id]?.name ?? id),
    readings: readingsOf(pack),
    followups: pack.lists.followUps.map((row) => [row.after, row.what, '', '']),
  };
};

/** A limit that is not stated leaves room to be written in; it is never guessed. */
const readingsOf = (pack: Pack): readonly (readonly string[])[] => {
  const rows = pack.limits.map((limit) => {
    const view = valueView(limit);
    return [limit.name, view.shown ?? 'none stated', '', '', ''];
  });
  const blank = Array.from({ length: 3 }, () => ['', '', ' ', '', '']);
  return [...rows, ...blank];
};
