// English: what a pack says of the sheets its values stand on.

export const valueSentences = {
  sheetStands: (issue: string, sheet: string, authority: string) =>
    `Does issue ${issue} of ${sheet} still stand? Ask ${authority}.`,
  sheetOver: (sheet: string, last: string, confirm: string) =>
    `value sheet ${sheet} last confirmed ${last}, older than its ${confirm}`,
  sheetUnchecked: (sheet: string, confirm: string) =>
    `Value sheet ${sheet}: cannot be checked whether it is over its ${confirm}, ` +
    'since no day is given',
} as const;
