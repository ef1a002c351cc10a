// A figure with its unit as a plant file has it: text, checked against the kind of its unit.

import { z } from 'zod';
import { readQuantity } from '../quantity/quantity.ts';

type Allowed = 'above nought' | 'nought or more' | 'any';

/** A length, mass … as text with a unit of the same kind as `unit`, such as `41 kg`. */
export const measure = (unit: string, allowed: Allowed = 'above nought') =>
  z
    .string()
    .superRefine((text, ctx) => {
      const read = readQuantity(text, unit, '');
      const wrong = (fault: 'F6' | 'F7', why: string, expected: string, remedy?: string) =>
        ctx.addIssue({ code: 'custom', message: why, params: { fault, expected, remedy } });
      if (!read.ok) {
        const [first] = read.problems;
        if (first !== undefined) wrong('F6', first.why, first.expected, first.remedy);
        return;
      }
      const { value } = read.quantity;
      if (allowed === 'any' || value > 0 || (allowed === 'nought or more' && value === 0)) return;
      wrong('F7', `it is ${value < 0 ? 'below nought' : 'nought'}`, `a figure ${allowed}`);
    })
    .meta({ unit, examples: [`1 ${unit}`] });
