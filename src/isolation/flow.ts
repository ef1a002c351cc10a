// Flow of least cost from one end of a graph to the other, in as many phases as there are barriers.

export type FlowGraph = {
  readonly count: number;
  /** Arcs of node n stand from `from[n]` to `from[n + 1]`. */
  readonly from: Int32Array;
  readonly arcs: Int32Array;
  readonly to: Int32Array;
  readonly room: Float64Array;
  readonly cost: Int8Array;
};

/** From, to, room, cost. */
export type Arc = readonly [number, number, number, number];

/** Each arc stands at an even index, and beside it the way back that flow opens. */
export function flowGraph(count: number, list: readonly Arc[]): FlowGraph {
  const from = new Int32Array(count + 1);
  const to = new Int32Array(2 * list.length);
  const room = new Float64Array(2 * list.length);
  const cost = new Int8Array(2 * list.length);
  list.forEach(([start, end, space, price], at) => {
    to[2 * at] = end;
    to[2 * at + 1] = start;
    room[2 * at] = space;
    cost[2 * at] = price;
    cost[2 * at + 1] = -price;
    from[start + 1] = (from[start + 1] ?? 0) + 1;
    from[end + 1] = (from[end + 1] ?? 0) + 1;
  });
  for (let node = 0; node < count; node += 1) {
    from[node + 1] = (from[node + 1] ?? 0) + (from[node] ?? 0);
  }
  const next = from.slice();
  const arcs = new Int32Array(2 * list.length);
  to.forEach((_, arc) => {
    const node = to[arc ^ 1] ?? 0;
    arcs[next[node] ?? 0] = arc;
    next[node] = (next[node] ?? 0) + 1;
  });
  return { count, from, arcs, to, room, cost };
}

export type Pushed = {
  /** Σ (barriers − cost) × flow: no choice of closures has less effort. */
  readonly value: number;
  /** Closures passed from the sources: the least that agrees with the flow, 0 to `barriers`. */
  readonly passed: readonly number[];
};

/** Pushes flow as long as it costs less than `barriers`; null: there is no end to it. */
export function pushFlow(
  graph: FlowGraph,
  start: number,
  end: number,
  barriers: number,
  least: number,
): Pushed | null {
  const price = new Int32Array(graph.count);
  let value = 0;
  for (;;) {
    const far = distances(graph, [[start]], price, least, false);
    const reached = far[end] ?? -1;
    const real = reached < 0 ? barriers : reached + (price[end] ?? 0) - (price[start] ?? 0);
    if (real >= barriers) break;
    for (let at = 0; at < graph.count; at += 1) {
      const own = far[at] ?? -1;
      price[at] = (price[at] ?? 0) + (own < 0 ? reached : Math.min(own, reached));
    }
    const pushed = saturate(graph, start, end, price, least);
    if (!Number.isFinite(pushed)) return null;
    value += (barriers - real) * pushed;
  }
  // Nowhere less than 0 and `barriers` at the end, and along what is left no more than its cost:
  // the least such figures are the lengths of the longest demands, found backward from all places.
  const layers: number[][] = [];
  const begin = (node: number, at: number) => {
    layers[at] ??= [];
    layers[at].push(node);
  };
  for (let node = 0; node < graph.count; node += 1) begin(node, (price[node] ?? 0) + barriers);
  begin(end, price[end] ?? 0);
  const back = distances(graph, layers, price, least, true);
  const passed = Array.from(back, (key, node) => (price[node] ?? 0) + barriers - key);
  return { value, passed };
}

/** Reduced distances from places by layers, −1 where nothing leads; costs are small and whole. */
function distances(
  graph: FlowGraph,
  layers: number[][],
  price: Int32Array,
  least: number,
  backward: boolean,
): Int32Array {
  const { from, arcs, to, room, cost } = graph;
  const far = new Int32Array(graph.count).fill(-1);
  const done = new Uint8Array(graph.count);
  for (let at = layers.length - 1; at >= 0; at -= 1) {
    for (const node of layers[at] ?? []) far[node] = at;
  }
  for (let steps = 0; steps < layers.length; steps += 1) {
    const layer = layers[steps] ?? [];
    layers[steps] = layer;
    for (let at = 0; at < layer.length; at += 1) {
      const node = layer[at] ?? 0;
      if (done[node] === 1 || far[node] !== steps) continue;
      done[node] = 1;
      for (let n = from[node] ?? 0; n < (from[node + 1] ?? 0); n += 1) {
        const arc = arcs[n] ?? 0;
        const used = backward ? arc ^ 1 : arc;
        if ((room[used] ?? 0) <= least) continue;
        const other = to[arc] ?? 0;
        const [a, b] = backward ? [other, node] : [node, other];
        const reached = steps + (cost[used] ?? 0) + (price[a] ?? 0) - (price[b] ?? 0);
        const known = far[other] ?? -1;
        if (known >= 0 && known <= reached) continue;
        far[other] = reached;
        layers[reached] ??= [];
        layers[reached].push(other);
      }
    }
  }
  return far;
}

/** All flow that the arcs of reduced cost nought can carry (Dinic, levels from the end). */
function saturate(
  graph: FlowGraph,
  start: number,
  end: number,
  price: Int32Array,
  least: number,
): number {
  let total = 0;
  for (;;) {
    const level = levels(graph, start, end, price, least);
    if ((level[start] ?? -1) < 0) return total;
    const at = graph.from.slice();
    for (;;) {
      const pushed = onePath(graph, start, end, { level, at, price, least });
      if (pushed === 0) break;
      total += pushed;
      if (!Number.isFinite(total)) return total;
    }
  }
}

const free = (graph: FlowGraph, arc: number, from: number, price: Int32Array, least: number) =>
  (graph.room[arc] ?? 0) > least &&
  (graph.cost[arc] ?? 0) + (price[from] ?? 0) - (price[graph.to[arc] ?? 0] ?? 0) === 0;

/** Steps to the end, so that a path looked for from the start meets few dead ends. */
function levels(graph: FlowGraph, start: number, end: number, price: Int32Array, least: number) {
  const { arcs, from, to } = graph;
  const level = new Int32Array(graph.count).fill(-1);
  const list = [end];
  level[end] = 0;
  for (let at = 0; at < list.length && (level[start] ?? -1) < 0; at += 1) {
    const node = list[at] ?? 0;
    for (let n = from[node] ?? 0; n < (from[node + 1] ?? 0); n += 1) {
      const arc = arcs[n] ?? 0;
      const other = to[arc] ?? 0;
      if ((level[other] ?? 0) >= 0 || !free(graph, arc ^ 1, other, price, least)) continue;
      level[other] = (level[node] ?? 0) + 1;
      list.push(other);
    }
  }
  return level;
}

type Way = {
  readonly level: Int32Array;
  /** Where among its arcs each place looks next. */
  readonly at: Int32Array;
  readonly price: Int32Array;
  readonly least: number;
};

function onePath(graph: FlowGraph, start: number, end: number, way: Way): number {
  const { level, at, price, least } = way;
  const { arcs, from, room, to } = graph;
  const path: number[] = [];
  let node = start;
  while (node !== end) {
    const n = at[node] ?? 0;
    if (n >= (from[node + 1] ?? 0)) {
      const last = path.pop();
      if (last === undefined) return 0;
      node = to[last ^ 1] ?? 0;
      at[node] = (at[node] ?? 0) + 1;
      continue;
    }
    const arc = arcs[n] ?? 0;
    const other = to[arc] ?? 0;
    const onward = (level[other] ?? -1) >= 0 && (level[other] ?? 0) === (level[node] ?? 0) - 1;
    if (onward && free(graph, arc, node, price, least)) {
      path.push(arc);
      node = other;
    } else at[node] = n + 1;
  }
  const pushed = path.reduce((most, arc) => Math.min(most, room[arc] ?? 0), Infinity);
  for (const arc of path) {
    room[arc] = (room[arc] ?? 0) - pushed;
    room[arc ^ 1] = (room[arc ^ 1] ?? 0) + pushed;
  }
  return pushed;
}
