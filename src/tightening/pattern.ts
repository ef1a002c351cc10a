// The order in which the bolts of a joint are tightened: cross for rings, inside-out for rows.

export type Point = readonly [number, number];

/**
 * Cross order for a ring of `n` bolts numbered 1..n clockwise: a bolt, its opposite, the quarter,
 * its opposite, then the largest gap left. Equals the rows of the ASME PCC-1 legacy cross-pattern
 * sequence that could be read (4, 8, 16); an odd count takes the bolt nearest to opposite.
 */
export const ringOrder = (n: number): number[] => {
  const used = new Set<number>();
  const order: number[] = [];
  const take = (k: number): boolean => {
    const bolt = ((k - 1 + 2 * n) % n) + 1;
    if (used.has(bolt)) return false;
    used.add(bolt);
    order.push(bolt);
    return true;
  };
  const pair = (k: number): void => {
    if (take(k)) take(k + Math.floor(n / 2));
  };
  while (order.length < n) {
    const start = widestStart(n, used);
    pair(start);
    pair(start + Math.round(n / 4));
  }
  return order;
};

const widestStart = (n: number, used: ReadonlySet<number>): number => {
  let best = 1;
  let bestGap = -1;
  for (let k = 1; k <= n; k += 1) {
    if (used.has(k)) continue;
    let gap = n;
    for (const u of used) gap = Math.min(gap, Math.abs(k - u), n - Math.abs(k - u));
    if (gap > bestGap) {
      best = k;
      bestGap = gap;
    }
  }
  return best;
};

/** Inside-out order (1-based) for bolts not on a ring: nearest the middle first, sides in turn. */
export const insideOutOrder = (points: readonly Point[]): number[] => {
  const cx = points.reduce((s, p) => s + p[0], 0) / points.length;
  const cy = points.reduce((s, p) => s + p[1], 0) / points.length;
  return points
    .map((p, i) => ({ i: i + 1, d: Math.hypot(p[0] - cx, p[1] - cy) }))
    .sort((a, b) => a.d - b.d || a.i - b.i)
    .map((row) => row.i);
};

/**
 * Positions on a drawing (y down) for a stated layout, a ring clockwise from the top; null where
 * unknown. The plant file's positions have y up, as on the machine.
 */
export const layoutPoints = (
  layout:
    | 'ring'
    | { readonly kind: 'rows' | 'rectangle'; readonly rows: number; readonly columns: number }
    | { readonly kind: 'positions'; readonly mm: readonly Point[] }
    | undefined,
  n: number,
): Point[] | null => {
  if (layout === undefined) return null;
  if (layout === 'ring') {
    return Array.from({ length: n }, (_, i) => {
      const a = (2 * Math.PI * i) / n;
      return [Math.round(1000 * Math.sin(a)) / 10, Math.round(-1000 * Math.cos(a)) / 10] as const;
    });
  }
  if (layout.kind === 'positions')
    return layout.mm.length === n ? layout.mm.map(([x, y]) => [x, -y] as const) : null;
  const all = grid(layout.rows, layout.columns);
  const points = layout.kind === 'rows' ? all : perimeter(all, layout.rows, layout.columns);
  return points.length === n ? points : null;
};

const grid = (rows: number, columns: number): Point[] => {
  const points: Point[] = [];
  for (let r = 0; r < rows; r += 1)
    for (let c = 0; c < columns; c += 1) points.push([c * 60, r * 60]);
  return points;
};

const perimeter = (all: readonly Point[], rows: number, columns: number): Point[] => {
  const right = (columns - 1) * 60;
  const bottom = (rows - 1) * 60;
  const rim = all.filter((p) => p[0] === 0 || p[1] === 0 || p[0] === right || p[1] === bottom);
  const mid: Point = [right / 2, bottom / 2];
  const angle = (p: Point) => Math.atan2(p[1] - mid[1], p[0] - mid[0]);
  return [...rim].sort((a, b) => angle(a) - angle(b));
};
