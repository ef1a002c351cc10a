// The end of an exhaustive switch: reaching it is a broken invariant.

export const assertNever = (value: never): never => {
  throw new Error(`unexpected ${JSON.stringify(value)}`);
};
