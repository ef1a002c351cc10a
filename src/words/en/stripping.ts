// English: stripping a machine nobody has written down, and boxing it up again.

export const stripping = {
  beginTitle: 'Strip as you go',
  on: 'On',
  noFile:
    'No file describes this machine. What you take off, shut and put in is kept as you go, and ' +
    'stands on the open list until it is made good.',
  machine: 'Machine',
  side: 'Side',
  component: 'Component',
  itWillBe: 'It will be',
  hands: 'Hands',
  begin: 'Begin stripping',
  machineLack: 'machine',
  componentLack: 'component',
  stillToSay: (list: string) => `Still to say: ${list}.`,
  title: 'Strip',
  boxUpLink: (n: number) => `Box up: ${n} to make good`,
  openLast: 'Open, the last first',
  whenFound: (what: string) => `when it was found: ${what}`,
  leaveIt: 'Leave it',
  keepIt: 'Keep it',
  photo: 'Photo',
  takePhoto: 'Take a photo',
  takeAnother: 'Take another photo',
  asFound: 'as it was found',
  another: 'another',
};

export const tookOff = {
  head: 'Took off',
  what: 'What',
  wet: 'Does it hold liquid?',
  itIs: 'It is',
  off: 'off',
  loosened: 'loosened, it stays there',
  held: 'What held it',
  howMany: 'How many',
  bag: 'Bag number',
  sealsOut: 'Old seals out',
  sealsIn: 'Old seals still in there',
  whatLack: 'what',
  heldLack: 'what held it',
  howManyLack: 'how many',
  wetLack: 'whether it holds liquid',
  usual: {
    cover: 'cover',
    pipe: 'pipe',
    hose: 'hose',
    guard: 'guard',
    pump: 'pump',
    cooler: 'cooler',
    strainerLid: 'strainer lid',
    bracket: 'bracket',
  },
};

export const shutForm = {
  head: 'Shut or unplugged',
  what: 'What',
  kind: 'Kind',
  positionFound: 'Position found',
  turns: 'Turns',
  tag: 'Tag',
  hung: (n: number) => `tag ${n} hung on it`,
  noTag: 'no tag yet',
  whatLack: 'what',
  kindLack: 'which kind',
  foundLack: 'the position it was found in',
  usual: {
    suction: 'sea suction valve',
    overboard: 'overboard valve',
    freshWater: 'fresh water valve',
    battery: 'starting battery',
  },
};

export const putIn = {
  head: 'Put in',
  what: 'What',
  where: 'Where',
  whatLack: 'what',
  whereLack: 'where',
};

export const drains = {
  hang: (tag: number, what: string) => `Hang tag ${tag} on: ${what}`,
  look: 'Look at a drain',
  which: 'Which drain',
  ran: 'Seen to run',
  died: 'Died away and stayed dead',
  whichLack: 'which drain',
  ranLack: 'whether flow was seen to run',
  diedLack: 'whether it died away',
  everyoneClear: 'Everyone called clear, and answered',
  turned: 'Turned by hand',
  started: 'Started',
};

export const boxUp = {
  title: 'Box up',
  nothingOpen: 'Nothing is open. Go to the record',
  upTo: 'Up to what',
  stillOff: 'Something else came off after it and is still off: look first.',
  order: 'Boxing up, in this order',
  proposed:
    'The reverse of what came off. It is only proposed: put one earlier or later, or tap it to ' +
    'do it first.',
  now: (text: string) => `Now: ${text}`,
  waits: (text: string) => `(waits) ${text}`,
  earlier: 'Earlier',
  later: 'Later',
};

export const drafts = {
  head: 'Draft description of this machine',
  written:
    'Written from what was seen on this job. Every field says seen once, by whom and when, or ' +
    'assumed: look it through and put it right before anyone relies on it.',
  save: (file: string) => `Save ${file}`,
};
