// English: values superseded since a pack was made, and what changed since a person's last job.

export const values = {
  holding: (n: number) =>
    n === 1 ? '1 open job holds a superseded value' : `${n} open jobs hold a superseded value`,
  superseded: 'Superseded since the pack was made',
  usedSince: 'Values used here, superseded since',
  inForce: 'In force now',
  withdrawn: 'withdrawn, none in its place',
  wasIn: (was: string, issue: string) => `was ${was} in issue ${issue}`,
  from: (issue: string, date: string, authority: string) =>
    `issue ${issue} of ${date}, ${authority}`,
  threads: (condition: string) => `threads ${condition}`,
  noCondition: 'incomplete: no thread condition issued',
  lookFirst: 'Look at the value before the last round.',
  alreadyTight: 'This joint was made tight by the value before.',
  looked: (figure: string) => `I have looked: ${figure}`,
  lookedSaid: (is: string, issue: string, was: string) => `${is} of issue ${issue}, was ${was}`,
  lookedBy: (name: string) => `Looked at by ${name}`,
  goneOn: (name: string) => `Gone on without, by ${name}`,
  notLooked: 'Nobody has looked yet',
  askForOne: 'No value is in force: ask for one, make another pack, or use anyway.',
  changedSince: (name: string) => `Changed since ${name} last did this`,
  lastDone: (title: string, on: string) => `Last: ${title}, closed ${on}`,
  nothingChanged: 'No value has changed.',
  added: 'new',
  gone: 'no longer in the pack',
  makeAgain: 'Make this pack again: it holds values that are no longer in force.',
};
