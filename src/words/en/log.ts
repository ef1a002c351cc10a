// English: the page of the log, and beginning a job.

export const log = {
  title: (vessel: string) => `Log of ${vessel}`,
  openJobs: 'Open jobs',
  none: 'None.',
  begin: 'Begin a job',
  closedJobs: 'Closed jobs',
  waiting: (n: number) => `${n} entries wait for one that has not arrived.`,
  unknown: (n: number) => `${n} are of a kind not known here. All are kept.`,
  leaveIt: 'Leave it',
  writeDown: 'Write it down',
};

export const watch = {
  head: 'Watch',
  nobody: 'Nobody has taken the watch.',
  since: (name: string, at: string, proved: string) => `${name}, since ${at} (${proved})`,
  who: 'Who takes the watch',
  take: 'Take the watch',
  handOver: 'Hand over the watch',
};

export const followUps = {
  head: 'To look at again',
  owner: (name: string) => `owned by ${name}`,
  done: 'Done',
  doneBy: (name: string) => `done by ${name}`,
};

export const sailings = {
  head: 'Sailings',
  wanted: 'Wanted in service',
  none: 'None written down.',
  strikeOut: 'Strike out',
  dayAndTime: 'Day and time',
  boundFor: 'Bound for',
  whatFor: 'What for',
  by: 'Written down by',
  add: 'Add a sailing',
  addDay: 'Add a day',
};

export const hoursWords = {
  head: 'Hours since last done',
  beside: 'Beside the interval as issued. No forecast is made.',
  noReading: 'No reading of its hours yet.',
  onMeter: (hours: string, day: string) => `${hours} h on the meter, ${day}`,
  noInterval: 'no interval issued',
  interval: (shown: string, issue: string, date: string) =>
    `interval ${shown}, issue ${issue} of ${date}`,
  cannotTell: (why: string, interval: string) => `Cannot tell: ${why}; ${interval}`,
  since: (interval: string) => `since last done; ${interval}`,
  write: 'Write down its hours',
  meter: 'Hours on the meter (h)',
  readBy: 'Read by',
};

export const begin = {
  title: 'Begin a job',
  noFile: 'No plant file for this machine: strip as you go',
  machine: 'Machine',
  chooseMachine: 'choose a machine',
  component: 'Component',
  chooseComponent: 'choose a component',
  whatIsDone: 'What is done',
  why: 'Why',
  when: 'When',
  hands: 'Hands',
  workOut: 'Work out the pack',
  reasons: {
    interval: 'its interval',
    failed: 'it failed',
    worn: 'found worn or leaking',
    open: 'the way is open anyway',
  },
};
