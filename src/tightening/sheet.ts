// The rows of a working, as the other calculations make them too.

export * from '../quantity/sheet.ts';
