// English: a second pair of eyes on the closures, and how many hands are aboard.

export const eyes = {
  title: 'A second look',
  handsAboard: 'Hands aboard',
  handsAboardWhy:
    'Everyone who could look a second time, deck included. With one hand aboard ' +
    'the same person looks again alone.',
  aboard: { '1': '1', '2': '2', '3': '3', more: 'more' },
  moments: { isolation: 'Isolation', 'line-up': 'Line-up' },
  isolation: 'Before anything wet is opened: how does each closure stand?',
  lineUp: 'Before the first start: how does each closure stand?',
  byAnother: 'Anyone trained, deck included, but not who did it. Go to each and say what you see.',
  whoLooks: 'Who looks?',
  didIt: (name: string) => `${name} (did it)`,
  otherName: 'Another name',
  looksNow: (name: string) => `${name} looks`,
  change: 'Somebody else looks',
  open: 'Open',
  shut: 'Shut',
  soManyTurns: 'Open, so many turns',
  turnsOpen: (n: string) => `${n} turns open`,
  howManyTurns: 'How many turns open?',
  anotherCount: 'Another count',
  thatMany: 'That many',
  cannotTell: 'Can’t tell',
  another: 'Another position',
  seen: 'Seen so far',
  still: (n: number) => (n === 1 ? 'The last one: this tap says it all.' : `${n} still to see`),
  lookAgain: (name: string) => `${name}: look again`,
  notYet: (names: string) => `Not yet. Not said to stand where it should: ${names}.`,
  otherwise: (by: string, names: string) =>
    `${by} saw it otherwise at: ${names}. Put it right, then it is looked at again.`,
  moved: 'Something was moved since it was looked at: it is looked at again.',
  notAlone: (name: string) =>
    `${name} did it, so ${name} is no second pair of eyes. Somebody else looks, or ` +
    'it is used anyway by name.',
  alone: (name: string) =>
    `${name} did it and looks again alone; the record says “checked alone” (common ` +
    'practice, no source).',
  notBefore: (at: string, now: string) => `Not before ${at} by this device’s clock; it is ${now}.`,
  passed: (name: string) => `Looked at by ${name}: as it should be.`,
  passedAlone: (name: string) => `Checked alone by ${name} (common practice, no source).`,
  goneWithout: (name: string) => `Gone on without a second look, by ${name}.`,
  nothing: 'Nothing is to be looked at a second time now.',
  toWork: 'Back to the work',
  hereToo: 'On another phone: open this job there, then',
  useAnyway: 'Use anyway, without this',
  couldNot: 'Could not do',
  found: 'Found something',
  stripLink: 'A second look at what is shut',
  stripWhy: 'Not yet looked at by a second pair of eyes. Nothing waits for it; the record says so.',
  head: 'Second looks',
  said: (name: string, at: string) => `looked at by ${name}, ${at} by the device’s clock`,
  saidAlone: (name: string, minutes: number, at: string) =>
    `checked alone by ${name}, ${minutes} min after the last closure was said, ` +
    `${at} by the device’s clock (common practice, no source)`,
  anyway: (name: string, reason: string) => `left out, used anyway by ${name}: ${reason}`,
  checkedAlone: 'checked alone (common practice, no source)',
  none: 'not looked at by a second pair of eyes',
};
