// Published examples of a torque wrench with an adapter, for the tests.

/** `known` is what the text prints; a figure that was not legible is null. */
export type AdapterExample = {
  readonly id: string;
  readonly title: string;
  readonly given: Readonly<Record<string, string | number>>;
  readonly output: 'setting' | 'torque';
  readonly unit: string;
  readonly printed: number | null;
  readonly exact: number;
  /** How far the printed figure may lie from the exact one: what its own rounding allows. */
  readonly rounding: number;
};

export const adapterExamples: readonly AdapterExample[] = [
  {
    id: 'tm9-254-straight',
    title: 'TM 9-254, Adapter Length Compensation, fig. 4-5 (read in a public page copy)',
    given: {
      setting: '60 lbf.in',
      wrenchLength: '12 in',
      adapterLength: '2 in',
      adapterAngle: 0,
    },
    output: 'torque',
    unit: 'lbf.in',
    printed: 70,
    exact: 70,
    rounding: 0,
  },
  {
    id: 'tm9-2350-261-adapter',
    title: 'TM 9-2350-261-20-1, p. 2-29 (read in a public page copy)',
    given: { torque: '40 lbf.ft', wrenchLength: '12 in', adapterLength: '4 in', adapterAngle: 0 },
    output: 'setting',
    unit: 'lbf.ft',
    printed: 30,
    exact: 30,
    rounding: 0,
  },
  {
    id: 'tm5-3805-274-adapter',
    title: 'TM 5-3805-274-13&P, WP 0051, fig. 4 (read in a public page copy)',
    given: { torque: '19 lbf.ft', wrenchLength: '22 in', adapterLength: '3 in', adapterAngle: 0 },
    output: 'setting',
    unit: 'lbf.ft',
    // Printed to whole lbf·ft, from a lever ratio rounded to 1.14.
    printed: 17,
    exact: 16.72,
    rounding: 0.5,
  },
  {
    id: 'navedtra-14315-ext',
    title: 'NAVEDTRA 14315, figs 3-44 and 3-45 (inputs read; the answer was not legible)',
    given: { torque: '100 lbf.in', wrenchLength: '12 in', adapterLength: '6 in', adapterAngle: 0 },
    output: 'setting',
    unit: 'lbf.in',
    printed: null,
    exact: 200 / 3,
    rounding: 0,
  },
];
