// English: the calculations, each tried with its own example.

export const calcSheet = {
  title: 'Calculations',
  one: (name: string) => `Calculation: ${name}`,
  reading: 'Reading the list …',
  cannotBeRead: 'it cannot be read',
  oneObject: 'one JSON object',
  input: 'Input (JSON; the example stands in it)',
  workOut: 'Work it out',
  problems: 'Problems',
  cannot: 'It cannot be worked out',
  result: 'Result',
  whole: 'The whole result (JSON)',
  notWorkedOut: 'not worked out',
};
