// What takes a lift outside the method: its figure is then the best case, and nothing fits.

import { formatNumber } from '../quantity/quantity.ts';
import type { Source } from '../quantity/types.ts';
import type { LiftInput } from './model.ts';
import {
  AIR_CEL,
  headroomSource,
  LONGEST_H,
  outsideSource,
  teamShares,
  teamSource,
  UPRIGHT_CM,
} from './tables/niosh.ts';

export type Outside = { readonly why: string; readonly source: Source };

const isOne = (word: string, of: readonly string[]) => of.includes(word.trim().toLowerCase());

const standing = ['standing', 'upright', 'standing upright'];
const both = ['2', 'two', 'both'];
const sure = ['firm', 'good', 'dry', 'sure', 'level', 'dry and level', 'firm and dry'];

/** Each condition given that the equation does not cover; a word not known here is one. */
export function outsideOf(input: LiftInput): readonly Outside[] {
  const found: Outside[] = [];
  const add = (is: boolean, why: string, source = outsideSource) => {
    if (is) found.push({ why, source });
  };
  const { posture, hands, footing, headroom, heat, moving, hold, duration, people } = input;
  add(posture !== undefined && !isOne(posture, standing), `posture ${posture}: not standing`);
  add(hands !== undefined && !isOne(String(hands), both), `hands ${hands}: not both`);
  add(footing !== undefined && !isOne(footing, sure), `footing ${footing}: not sure`);
  if (headroom !== undefined) {
    const why = `headroom of ${formatNumber(headroom.value)} cm: nobody tall stands upright`;
    add(headroom.value < UPRIGHT_CM, why, headroomSource);
  }
  if (heat !== undefined) {
    const { least, most } = AIR_CEL;
    const why = `air of ${formatNumber(heat.value)} °C: not between ${least} and ${most} °C`;
    add(heat.value < least || heat.value > most, why);
  }
  add(moving === true, 'the floor moves');
  if (hold !== undefined) {
    add(hold.value > 0, `held for ${formatNumber(hold.value)} s: the method knows no holding`);
  }
  add((duration?.value ?? 0) > LONGEST_H, 'more than 8 hours of lifting in a day');
  add(teamShares[people] === undefined, `no rule for a team of ${people}`, teamSource);
  return found;
}

/** The conditions that nothing was said of. */
export const unsaid = (input: LiftInput): readonly string[] =>
  (['posture', 'hands', 'footing', 'headroom', 'heat', 'moving', 'hold'] as const).filter(
    (field) => input[field] === undefined,
  );
