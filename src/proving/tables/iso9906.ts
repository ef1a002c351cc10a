// Acceptance grades of rotodynamic pumps: tolerance of head and flow as fractions.

export const GRADES = ['1B', '1E', '1U', '2B', '2U', '3B'] as const;
export type Grade = (typeof GRADES)[number];

type Band = readonly [lower: number, upper: number];

/** 2B was confirmed by a public text, the head of 1B by an older class; the rest is from memory. */
export const grades: Readonly<Record<Grade, { readonly head: Band; readonly flow: Band }>> = {
  '1B': { head: [-0.03, 0.03], flow: [-0.05, 0.05] },
  '1E': { head: [-0.03, 0.03], flow: [-0.05, 0.05] },
  '1U': { head: [0, 0.06], flow: [0, 0.1] },
  '2B': { head: [-0.05, 0.05], flow: [-0.08, 0.08] },
  '2U': { head: [0, 0.1], flow: [0, 0.16] },
  '3B': { head: [-0.07, 0.07], flow: [-0.09, 0.09] },
};

export const gradeSource = {
  kind: 'from memory',
  of: 'ISO 9906:2012, Table 8, acceptance grades',
} as const;
