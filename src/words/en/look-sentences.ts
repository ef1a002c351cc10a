// English: what a pack says of the second look.

export const lookSentences = {
  lookIsolation:
    'A second look at the isolation, before anything wet is opened. Somebody else than who did it, ' +
    'anyone trained, goes to each closure with a blank list and says how it stands.',
  lookIsolationWhy:
    'who shut it sees what was meant; another sees what is (common practice, no source)',
  lookLineUp:
    'A second look at the line-up, before the first start. Somebody else than who did it, ' +
    'anyone trained, goes to each closure with a blank list and says how it stands.',
  lookLineUpWhy:
    'a closure left shut can ruin the machine in its first minute (common practice, no source)',
} as const;
