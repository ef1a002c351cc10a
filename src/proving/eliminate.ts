// Linear equations with more or fewer of them than unknowns: what they settle, by elimination.

export type Equation = { readonly factors: readonly number[]; readonly right: number };

const NOUGHT = 1e-11;

/** The unknowns that the equations settle, the others null. Equations too many are left aside. */
export function eliminate(equations: readonly Equation[], unknowns: number): (number | null)[] {
  const rows = equations.map(({ factors, right }) => {
    const size = Math.max(...factors.map(Math.abs));
    const scale = size > 0 ? 1 / size : 1;
    return [...factors, right].map((one) => one * scale);
  });
  const cell = (row: number, column: number): number => rows[row]?.[column] ?? 0;
  const leads: number[] = [];
  let top = 0;
  for (let column = 0; column < unknowns && top < rows.length; column += 1) {
    let best = top;
    for (let row = top + 1; row < rows.length; row += 1) {
      if (Math.abs(cell(row, column)) > Math.abs(cell(best, column))) best = row;
    }
    if (Math.abs(cell(best, column)) < NOUGHT) continue;
    const [chosen = [], held = []] = [rows[best], rows[top]];
    rows[best] = held;
    const lead = chosen[column] ?? 1;
    const turned = chosen.map((one) => one / lead);
    rows[top] = turned;
    rows.forEach((row, at) => {
      if (at === top) return;
      const times = row[column] ?? 0;
      if (times !== 0) rows[at] = row.map((one, i) => one - times * (turned[i] ?? 0));
    });
    leads.push(column);
    top += 1;
  }
  const found = new Array<number | null>(unknowns).fill(null);
  leads.forEach((column, row) => {
    const free = Array.from({ length: unknowns }, (_, at) => at).some(
      (at) => at !== column && Math.abs(cell(row, at)) > NOUGHT,
    );
    if (!free) found[column] = cell(row, unknowns);
  });
  return found;
}
