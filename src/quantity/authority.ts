// The authority line and the cautions: the one place they are worded, for screen, paper and help.

export const AUTHORITY_LINE =
  "This is no authority. The maker's manual, the procedure in force, the vessel's safety " +
  'management system, class and local law come first; work reserved to licensed or authorised ' +
  'people stays theirs.';

export const NAMES_NOT_PROVED = 'names not proved';

export const ISOLATION_BY_HAND = 'Listed by hand, not worked out or checked against the diagram';

export const ISOLATION_NOT_STATED = 'ISOLATION NOT STATED';

/** The hazards whose caution stands at the step. `sign` is the ISO 7010 reference. */
export const CAUTIONS = {
  'stored energy': {
    sign: 'W001',
    text: 'Stored energy: pressure, springs or a raised weight can let go when this is opened.',
    verify: 'pressure gone and springs or weights held',
  },
  flooding: {
    sign: 'W001',
    text: 'Flooding: this opens a line that leads to the sea or a tank.',
    verify: 'every closure to the sea shut and proved, a blank in hand',
  },
  heat: {
    sign: 'W017',
    text: 'Hot: surfaces, water or oil may burn. The gate is a measured temperature.',
    verify: 'temperature measured and pressure zero',
  },
  lifting: {
    sign: 'W015',
    text: 'Lifting: keep out from under the load; hands clear of the gap.',
    verify: 'gear marked with its safe load and hooked where the load hangs level',
  },
  rotation: {
    sign: 'W018',
    text: 'Rotation: the machine may turn or start by itself.',
    verify:
      'starting, turning gear and automatic start cut off; everyone clear, called and answered',
  },
  'confined space': {
    sign: 'W041',
    text: 'Confined space: the air may not keep you alive.',
    verify: 'atmosphere tested and a person standing by',
  },
  electricity: {
    sign: 'W012',
    text: 'Electricity: treat as live until proved dead.',
    verify: 'supply off, locked and proved dead',
  },
  chemicals: {
    sign: 'W023',
    text: 'Chemicals: coolant, cleaner or sealant can harm skin, eyes and lungs.',
    verify: 'the safety data sheet read and protection worn',
  },
  fuel: {
    sign: 'W021',
    text: 'Fuel or oil: spray or drips on a hot surface burn.',
    verify: 'hot surfaces shielded, drips caught, no flame near',
  },
} as const satisfies Record<string, { sign: string; text: string; verify: string }>;

export type Hazard = keyof typeof CAUTIONS;

/** A caution as it stands at a step; `verify` is what a competent person must see. */
export type Caution = {
  readonly hazard: Hazard;
  readonly sign: string;
  readonly text: string;
  readonly verify: string;
};

export const cautionFor = (hazard: Hazard): Caution => ({ hazard, ...CAUTIONS[hazard] });
