// English: handing over the watch on a job.

export const handOver = {
  title: 'Handing over the watch',
  given: (by: string, to: string, at: string) => `${by} to ${to}, ${at}.`,
  allSeen: 'All of it seen at the machine.',
  someNotSeen: (n: number, of: number) => `${n} of ${of} not seen.`,
  temporary: 'Put in for the time being',
  notTight: 'Bolts not tightened',
  findings: 'Wants a decision',
  isolation: 'Isolation',
  next: 'What is next',
  handItOver: 'Hand it over',
  handsItOver: (name: string) => `${name} hands it over`,
  who: 'Who takes the watch',
  open: 'Open, and where',
  nothingOpen: 'Nothing is open.',
  notSeen: 'not seen',
  seenBy: (name: string) => `seen by ${name}`,
  seen: 'Seen',
};
