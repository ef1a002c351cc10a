// English: the steps that look at, fit and put back.

const given = (text: string | null, before: string, behind = ''): string =>
  text === null ? '' : `${before}${text}${behind}`;

export const backSentences = {
  asFoundLook: (part: string) =>
    `${part} as found, before cleaning: condition, what failed, pieces missing.`,
  asFoundLookWhy: 'life and causes are learnt from what was found, and only now can it be seen',
  lookAt: (part: string, what: string) => `${part}: ${what}.`,
  lookAtWhy: 'can be seen only while it is off',
  faces: (joint: string, groove: boolean) =>
    `${joint}: both faces clean, felt with a nail${groove ? '; groove unmarked' : ''}; ` +
    'threads and blind holes clean and dry.',
  facesWhy: 'a bulge of old seal lets by; dirt in a thread eats the torque',
  sealsIn: (
    joint: string,
    n: number,
    seal: string,
    size: string | null,
    wetWith: string | null,
    sealant: string | null,
  ) =>
    `${joint}: ${n} new ${seal}${given(size, ' (', ')')}` +
    given(wetWith, '; wet it with ', ' only') +
    `${sealant === null ? '; no sealant' : `; sealant: ${sealant}`}.`,
  sealsInWhy: 'every gasket and ring of a disturbed joint is renewed and counted',
  looseIn: (joint: string, n: number, name: string) => `${joint}: ${n} × ${name} in.`,
  looseInWhy: 'it came out with this joint',

  backInPlace: (part: string) => `${part} back in its place.`,
  onGuides: ' on the guide studs',
  onStuds: ' on its studs',
  offerUp: (part: string, on: string, carried: string | null, shaft: boolean) =>
    `Offer up ${part}${on}` +
    (carried === null
      ? `${shaft ? '; never hung on its shaft' : ''}.`
      : `; carried by ${carried}, never hung on its shaft.`),
  backAfter: (parts: readonly string[]) =>
    `goes back after ${parts.join(', ')}, which it was in the way of`,
  backWhy: 'it was taken off, so it goes back',
  sideBySide: (part: string) =>
    `Lay old and new ${part} side by side: ports, flange, shaft end, rotation, length.`,
  sideBySideWhy: 'what looks the same may not be',
  asItIs: (part: string) => `${part}: turns free, nothing left inside, marks readable.`,
  asItIsWhy: 'it goes back as it is now',
  toBeFitted: (part: string) => `${part} to be fitted: note its serial or batch.`,
  toBeFittedWhy: 'the record names what sits in the machine from now on',
  awayWhy: 'every temporary thing is counted back',
  blankOff: (name: string, n: number, where: string) =>
    `${name} (number ${n}) off ${where}; look inside.`,
  supportAway: (name: string, n: number) => `Support away: ${name} (number ${n}).`,
  guidesIn: (name: string, n: number, where: string) =>
    `${name} (number ${n}) into ${where}, opposite each other.`,
  guidesInWhy: 'the part is offered up on guides, never hung on its shaft',
  guidesAway: (name: string, n: number) =>
    `Other bolts started by hand, then ${name.toLowerCase()} (number ${n}) away.`,

  startByHand: (joint: string, fasteners: string) =>
    `${joint}: start ${fasteners} by hand, all of them.`,
  startByHandWhy: 'a bolt that does not start by hand is cross-threaded or out of line',
  makeUp: (joint: string, fasteners: string | null, locking: string | null) =>
    `${joint}: make up${given(fasteners, ' ', '; tug it')}.${given(locking, ' Lock: ', '.')}`,
  makeUpWhy: 'it was undone, so it is made up',
  handTight: (joint: string, fasteners: string, locking: string | null) =>
    `${joint}: ${fasteners} tight by hand with a plain spanner; no value is issued.` +
    `${given(locking, ' Lock: ', '.')}`,
  askedValue: (joint: string, fasteners: string, locking: string | null) =>
    `${joint}: ${fasteners} to the value somebody gave beforehand; none is issued.` +
    `${given(locking, ' Lock: ', '.')}`,
  noValueStated: 'NO VALUE STATED',
  shareOfValue: (figure: string, round: string, shown: string) =>
    `${figure} (${round} of ${shown})`,
  figures: (all: readonly string[]) => all.join(' / '),
  onceMore: (figure: string, joint: string, locking: string | null) =>
    `${figure} · ${joint}: once more round, bolt by bolt in order, until none moves.` +
    `${given(locking, ' Lock: ', '.')}`,
  onceMoreWhy: 'bolts tightened early slacken as the others are pulled',
  tightenTo: (figure: string, joint: string, fasteners: string, order: boolean) =>
    `${figure} · ${joint}: ${fasteners}${order ? ' in the order drawn' : ''}.`,
  roundWhy: 'rounds bring the faces together level',
  meetsSquare: (joint: string) =>
    `${joint}: the pipe meets its face square and free, not pulled over.`,
  meetsSquareWhy: 'a pipe pulled to its face loads the part and cracks or leaks later',
  measureLeft: (setting: string) => `Measure ${setting} as left.`,
  measureLeftWhy: 'the joint was disturbed, so its setting is measured again',

  bothNamed: (pipe: string, mounting: string) => `${pipe} and ${mounting}`,
  pipeInTheWay: (joints: string) =>
    `${joints}: the pipe stands in the way of the mounting, so the mounting is tightened first ` +
    'and the pipe offered up after; it must still meet its face square and free.',
  mountingFirst:
    'Mounting first, pipes last (common practice, no source): a pipe pulled to its face ' +
    'loads the part.',
} as const;
