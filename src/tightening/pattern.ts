// The order in which the bolts of a joint are tightened: cross for rings, inside-out for rows.

export type Point = readonly [number, number];

export type Layout =
  | 'ring'
  | { readonly kind: 'rows' | 'rectangle'; readonly rows: number; readonly columns: number }
  | { readonly kind: 'positions'; readonly mm: readonly Point[] };

/**
 * Cross order for a ring of `n` bolts numbered 1..n clockwise: a bolt, its opposite, and where
 * `n` is a multiple of four the quarter and its opposite; then the same from the next start. The
 * next start lies where the ring is least tightened. One law gives every row of the ASME PCC-1
 * legacy cross-pattern that is had, and a star on an odd ring.
 */
export const ringOrder = (n: number): number[] => {
  const parts = n % 4 === 0 ? 4 : n % 2 === 0 ? 2 : 1;
  const starts = spreadOut(n / parts);
  if (parts === 1) return starts;
  const half = n / 2;
  const quarter = n / 4;
  return starts.flatMap((k) =>
    parts === 2 ? [k, k + half] : [k, k + half, k + quarter, k + half + quarter],
  );
};

/**
 * 1..m, each next one farthest from those before it on a circle of m; of equals the one in the
 * wider gap, then the one farthest from the last, then the lowest.
 */
const spreadOut = (m: number): number[] => {
  const order = m > 0 ? [1] : [];
  const used = new Set(order);
  while (order.length < m) {
    const last = order[order.length - 1] ?? 1;
    let best = 0;
    let bestRank: readonly number[] = [];
    for (let k = 1; k <= m; k += 1) {
      if (used.has(k)) continue;
      const rank = rankOf(k, last, m, used);
      if (best === 0 || isAbove(rank, bestRank)) {
        best = k;
        bestRank = rank;
      }
    }
    order.push(best);
    used.add(best);
  }
  return order;
};

const rankOf = (k: number, last: number, m: number, used: ReadonlySet<number>): number[] => {
  let up = 1;
  while (!used.has(((k - 1 + up) % m) + 1)) up += 1;
  let down = 1;
  while (!used.has(((k - 1 - down + m) % m) + 1)) down += 1;
  const away = Math.abs(k - last);
  return [Math.min(up, down), up + down, Math.min(away, m - away)];
};

const isAbove = (a: readonly number[], b: readonly number[]): boolean => {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at >= 0 && (a[at] ?? 0) > (b[at] ?? 0);
};

/** Distances this near to each other are one distance: positions are measured with a rule. */
const SAME_DISTANCE = 0.02;

/**
 * Inside-out order (1-based): the bolts nearest the middle first; those at one distance from it
 * cross over like a ring, so that bolts that do lie on a ring get the cross order.
 */
export const insideOutOrder = (points: readonly Point[]): number[] => {
  const [cx, cy] = middleOf(points);
  const rows = points.map(([x, y], i) => ({
    bolt: i + 1,
    away: Math.hypot(x - cx, y - cy),
    angle: Math.atan2(y - cy, x - cx),
  }));
  rows.sort((a, b) => a.away - b.away || a.bolt - b.bolt);
  const same = SAME_DISTANCE * (rows[rows.length - 1]?.away ?? 0);
  const groups: (typeof rows)[] = [];
  for (const row of rows) {
    const group = groups[groups.length - 1];
    const first = group?.[0];
    if (group === undefined || first === undefined || row.away - first.away > same) {
      groups.push([row]);
    } else group.push(row);
  }
  return groups.flatMap(acrossTheMiddle);
};

/** Clockwise from the lowest number, and then across. */
const acrossTheMiddle = (
  group: readonly { readonly bolt: number; readonly angle: number }[],
): number[] => {
  const round = [...group].sort((a, b) => a.angle - b.angle || a.bolt - b.bolt);
  const bolts = round.map(({ bolt }) => bolt);
  const from = bolts.indexOf(Math.min(...bolts));
  return ringOrder(bolts.length).map((k) => bolts[(from + k - 1) % bolts.length] ?? 0);
};

export const middleOf = (points: readonly Point[]): Point => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];

/** The order of any layout; null where the positions of `n` bolts are not known by it. */
export const boltOrder = (layout: Layout, n: number): number[] | null => {
  if (layout === 'ring') return ringOrder(n);
  const points = layoutPoints(layout, n);
  return points === null ? null : insideOutOrder(points);
};

/**
 * Positions on a drawing (y down) for a stated layout, a ring clockwise from the top; null where
 * unknown. The plant file's positions have y up, as on the machine.
 */
export const layoutPoints = (layout: Layout | undefined, n: number): Point[] | null => {
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

const PITCH = 60;

const grid = (rows: number, columns: number): Point[] => {
  const points: Point[] = [];
  for (let r = 0; r < rows; r += 1)
    for (let c = 0; c < columns; c += 1) points.push([c * PITCH, r * PITCH]);
  return points;
};

/** Clockwise from the upper left corner. */
const perimeter = (all: readonly Point[], rows: number, columns: number): Point[] => {
  const right = (columns - 1) * PITCH;
  const bottom = (rows - 1) * PITCH;
  if (rows === 1 || columns === 1) return [...all];
  return [
    ...all.filter(([, y]) => y === 0),
    ...all.filter(([x, y]) => x === right && y > 0 && y < bottom),
    ...all.filter(([, y]) => y === bottom).reverse(),
    ...all.filter(([x, y]) => x === 0 && y > 0 && y < bottom).reverse(),
  ];
};
