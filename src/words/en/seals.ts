// English: the seals of a pack against the stores, in sentences and on screens and sheets.

const RATINGS: Readonly<Record<number, string>> = { 3: 'doubtful', 4: 'unsatisfactory' };

export const sealSentences = {
  storeOther: (is: string, wanted: string) => `it is ${is}, needed is ${wanted}`,
  storeNoCompound: (wanted: string) => `its compound is not on the bag, needed is ${wanted}`,
  storeNoThickness: (wanted: string) => `its thickness is not known, needed is ${wanted}`,
  storeNotReady: (condition: string) => `not ready to fit: ${condition}`,
  storeReserved: (job: string) => `kept for another job: ${job}`,
  storeOtherHand: (hand: string, side: string) =>
    `of the other hand: it is for ${hand}, this machine stands to ${side}`,
  storeHandUnknown: (hand: string) =>
    `it is for ${hand}, and nobody has said on which side this machine stands`,
  storeLabelEnded: (day: string) => `its label ended on ${day}`,
  storeEnded: (day: string, rule: string, memory: boolean) =>
    `its life in store ended on ${day} under ${rule}${memory ? ' (from memory)' : ''}`,
  storeInspect: (day: string, rule: string, memory: boolean, to: string) =>
    `its life in store ended on ${day} under ${rule}${memory ? ' (from memory)' : ''}; ` +
    `after inspection it may be used to ${to}`,
  storeCuredLater: (cured: string) => `cured ${cured}, after the day of the work`,
  storeNoCure: 'no cure date on it: its age cannot be checked',
  storeNoRule: 'no storage rule is named: its age cannot be checked',
  storeNoGroup: (compound: string, rule: string) =>
    `${rule} says nothing of ${compound}: its age cannot be checked`,
  storeNoName: 'a compound that is not stated',
  storeAllDrawn: 'all of it is drawn for other joints of this job',
  storeMayNotTouch: (compound: string) => `it may not touch ${compound}`,
  storeOnly: (item: string, why: readonly string[]) => `${item}: ${why.join('; ')}`,
  storeNone: 'none held',
  amountPractice: 'thin film; common practice, no source',

  sealNoSize: 'its size is not stated: which one it takes cannot be checked',
  sealNoCompound: 'its compound is not stated: grease and medium cannot be checked',
  sealBadIn: (compound: string, medium: string, rating: number) =>
    `${compound} in ${medium}: ${RATINGS[rating] ?? rating} (from memory)`,
  sealBadGrease: (compound: string, grease: string, rating: number) =>
    `${grease} on ${compound}: ${RATINGS[rating] ?? rating}, it swells or softens it (from memory)`,
  sealBadHeat: (compound: string, is: string, least: string, most: string) =>
    `${is} °C in its line; ${compound} bears ${least} to ${most} °C`,
  sealJudged: (compound: string, verdict: string) => `${compound}: ${verdict} here`,
  sealGreaseUnknown: (grease: string, compound: string) =>
    `${grease} on ${compound} is in no table: cannot be checked`,
  sealMediumUnknown: (compound: string, medium: string) =>
    `${compound} in ${medium} is in no table: cannot be checked`,
  sealDuty: (limit: string, is: string) => `its limit is ${limit}, its line has ${is}`,
  sealNoLimits: 'what heat and pressure it bears is not stated: cannot be checked',
  'sealNo-heat-limit': 'temperature limit not stated: cannot be checked',
  'sealNo-heat-line': 'temperature of its line not stated: cannot be checked',
  'sealNo-pressure-limit': 'pressure limit not stated: cannot be checked',
  'sealNo-pressure-line': 'pressure of its line not stated: cannot be checked',
  sealForbidden: (sealant: string, why: string) => `no ${sealant} here: ${why}`,
  sealNoSealantHere: (sealant: string) => `no ${sealant}: this gasket sets a clearance`,
  sealSetsClearance: (thickness: string) =>
    `sets a clearance: one gasket of ${thickness}, no more than one, no sealant`,
  thicknessMissing: 'the issued thickness',
  sealBlind: 'blind holes clean and dry: no grease, no sealant in them',
  sealReuse: (rule: string) => `may go back only if a named look says so: ${rule}`,

  mayUseSeal: (item: string, seal: string, joint: string) =>
    `${item}: may it be used as ${seal} of ${joint}?`,
  mayUseSealWhy: (short: number, against: readonly string[]) =>
    `${short} short, this comes nearest, but: ${against.join('; ')}`,
  whereFrom: (seal: string, joint: string) => `${seal} of ${joint}: where does it come from?`,
  whereFromWhy: (short: number, needed: number) => `${short} of ${needed} short in the stores`,
  sealRight: (seal: string, joint: string) => `${seal} of ${joint}: is that right?`,
  sealRightWhy: (against: readonly string[]) => against.join('; '),
  mayUseItem: (item: string, mark: string | null, part: string) =>
    `${item}${mark === null ? '' : ` ${mark}`}: may it go in as ${part}?`,
  mayUseItemWhy: (against: readonly string[]) =>
    `none is ready to fit here; this comes nearest, but: ${against.join('; ')}`,
  itemFrom: (part: string) => `${part}: where does the one come from that goes in?`,
  itemFromWhy: 'none is held that fits',
  consumableFrom: (name: string, joints: readonly string[]) =>
    `${name} for ${joints.join(', ')}: where does it come from?`,
  consumableFromWhy: (against: readonly string[]) => against.join('; '),
} as const;

export const seals = {
  title: 'Seals',
  noList: 'No list of stores is kept: nothing is drawn, and nothing is known to be short.',
  inDateOn: (day: string) => `in date on ${day}`,
  rule: (rule: string | null) => (rule === null ? 'no storage rule named' : `under ${rule}`),
  short: 'Short before anything is opened',
  shortOf: (short: number, count: number) => `${short} of ${count} short`,
  draw: (count: number, place: string | null) =>
    `draw ${count}${place === null ? '' : `, ${place}`}`,
  from: (place: string) => `from ${place}`,
  until: (day: string) => `to ${day}`,
  anyway: (by: string, against: string) => `used anyway by ${by}: ${against}`,
  notDrawn: 'Near, and why not',
  against: 'Speaks against it',
  notChecked: 'Cannot be checked',
  grease: (name: string) => `grease: ${name}`,
  noGrease: 'no grease stated',
  sealant: (name: string) => `sealant: ${name}`,
  noSealant: 'no sealant',
  size: 'size not stated',
  spares: 'Goes in new',
  consumables: 'Grease, sealant and the like',
  amountOpen: 'amount not stated',
  near: 'The way is open to these',
  nearOld: (years: string, limit: string) =>
    `${years} years old, renewed after ${limit}: do it now too`,
  nearAge: (years: string) => `${years} years old`,
  nearLimit: (limit: string) => `renewed after ${limit} years`,
  nearUnknown: 'age not known',
  map: 'Seal map',
  mapAlt: (n: number) => `Seals by joint, ${n} in all`,
  counted: 'Count it out of the drawer before anything is shut',
  lSeal: 'Seal',
  lDraw: 'Draw',
  lNear: 'Near, and why not; not checked',
  lCounted: 'In hand',
};
