// English: what the record says: entries of the open list, findings, refusals, handing over.

export const recordSentences = {} as const;
