// English: the steps that make safe and take off.

const given = (text: string | null, before: string, behind = ''): string =>
  text === null ? '' : `${before}${text}${behind}`;

export const offSentences = {
  and: (words: readonly string[]) =>
    words.length < 2
      ? (words[0] ?? '')
      : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`,
  listed: (words: readonly string[]) => words.join(', '),
  ofThread: (what: string, thread: string) => `${what} ${thread}`,
  counted: (n: number, what: string) => `${n} ${what}`,

  tellVessel: 'Tell the bridge and the engineer in charge that the sea side is being opened.',
  tellStation:
    'Tell the control room and the person in charge that the water side is being opened.',
  tellWhy: 'whoever is not at the job must know in the first minute if water comes in',
  bringTo: (name: string, position: string, at: string | null, secure: string | null) =>
    `${name}: bring to ${position}.${given(at, ' ', '.')} Note how it was found.` +
    `${given(secure, ' Secure: ', '.')}`,
  listedByHand: (by: string) => `listed by hand by ${by}`,
  nobody: 'nobody',
  tagOn: (n: number, name: string, position: string, station: string) =>
    `Tag ${n} on ${name} (${position}), ${station}.`,
  tagOnWhy: 'one tag for each place it can be moved from; who shuts it hangs it',
  openDrain: (name: string, liquid: boolean) =>
    `Open ${name}${liquid ? '; catch what comes' : ''}.`,
  openDrainWhy: 'what is trapped must go before anything is opened',
  seeItDie: (name: string) =>
    `At ${name}: see water run, then die away and stay dead. ` +
    'Nothing came at all: rod the drain; that is no proof.',
  hearItDie: (name: string) =>
    `At ${name}: hear it blow, then die away and stay dead. ` +
    'Nothing came at all: clear it; that is no proof.',
  proveWhy: 'a closure that looks shut may pass; no wet joint is opened before this',

  lookIsolation:
    'A second look at the isolation, before anything wet is opened. Somebody else than who did ' +
    'it, anyone trained, goes to each closure with a blank list and says how it stands.',
  lookIsolationWhy:
    'who shut it sees what was meant; another sees what is (common practice, no source)',
  lookLineUp:
    'A second look at the line-up, before the first start. Somebody else than who did ' +
    'it, anyone trained, goes to each closure with a blank list and says how it stands.',
  lookLineUpWhy:
    'a closure left shut ruins the machine in its first minute (common practice, no source)',

  matchMark: (name: string) =>
    `Match-mark ${name}, note which way its ports face, and take a photo before the first bolt.`,
  matchMarkWhy: 'it can go back upside down, and then the flow turns round',
  measureFound: (setting: string) => `Measure ${setting} as found, before it is disturbed.`,
  measureFoundWhy: 'as found tells wear; as left is compared with it',
  undo: (
    joint: string,
    fasteners: string | null,
    careful: boolean,
    leave: string | null,
    weight: string | null,
  ) =>
    (fasteners === null ? `Undo ${joint}` : `${joint}: undo ${fasteners}`) +
    (careful
      ? '. Slacken the far side first, break the joint with the fasteners still on, watch; ' +
        'only then take them off'
      : '') +
    given(leave, '. DO NOT DISTURB without leave: ') +
    `.${given(weight, ' Weight taken first: ', '.')}`,
  sealsOut: (joint: string, n: number, seal: string) =>
    `${joint}: ${n} old ${seal} out. How many came out?`,
  sealsOutWhy: 'an old one left in the groove can’t be seen once the new one is on top',
  looseOut: (joint: string, n: number, name: string) => `${joint}: ${n} × ${name} out and bagged.`,
  looseOutWhy: 'loose parts are counted like bolts',
  massNotStated: 'mass not stated',
  move: (
    part: string,
    mass: string,
    off: boolean,
    way: string | null,
    carried: string | null,
    support: string | null,
    drawOff: string | null,
  ) =>
    `${part} (${mass}) ${off ? 'off' : 'aside and supported'}${given(way, ': ')}` +
    `${given(carried, '. Carried by ')}${given(support, '. Support: ')}` +
    `${given(drawOff, '. Draw it ', ' clear of the studs')}.`,
  putSupport: (where: string, name: string, n: number) =>
    `Support ${where}: ${name} (number ${n}).`,
  putSupportWhy: 'what is put aside must not hang on its joints',
  putBlank: (name: string, n: number, where: string) =>
    `${name} (number ${n}) on the open end at ${where}.`,
  putOther: (name: string, n: number, where: string) => `${name} (number ${n}) in at ${where}.`,
  putBlankWhy: 'an open end without a blank lets the sea in and lets things fall in',
  blankFor: (joint: string) => `Blank for ${joint}`,
  twoGuideStuds: 'Two guide studs',
  noteItem: (part: string) => `${part}: note its serial or batch and the running hours.`,
  noteItemWhy: 'where it was, how long it ran: this is where life data comes from',

  holdsUntil: (part: string, off: boolean) =>
    `holds ${part} until it goes ${off ? 'off' : 'aside'}`,
  withItsWay: 'undone with the others of its way',
  theTarget: 'the target',
  inTheWayOfJoint: (joint: string) => `in the way of joint ${joint} on this side`,
  inTheWayOf: (part: string) => `in the way of ${part} on this side`,
  undoingJoint: (joint: string) => `undoing joint ${joint}`,
  makingJoint: (joint: string) => `making joint ${joint}`,
  wayOfPart: (way: string, part: string) => `way ${way} of ${part}`,
  minutesAssumed: (proven: boolean, minutes: number, what: readonly string[]) =>
    `${proven ? 'The plan is proven for the minutes assumed' : 'The minutes are assumed'}: ` +
    `${minutes} min (common practice, no source) each for ${what.join(', ')}.`,
  noAccessStated: (joints: readonly string[]) =>
    `No access is stated for ${joints.join(', ')}: taken as free, cannot be checked.`,
  noWayKnown: (parts: readonly string[]) =>
    `No way is known for ${parts.join(', ')}: the plan leaves it where it is.`,
  jointsMade: (joints: string) => `joints undone and made: ${joints}`,
  partsAway: (parts: string) => `parts away and back: ${parts}`,
  inAll: 'in all',
  minutesCounted: 'minutes counted for each figure that is not known',
  clearForNext: 'must be clear for what follows',
} as const;
