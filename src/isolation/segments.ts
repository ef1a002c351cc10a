// What valves can part no further: nodes and links that hang together (Walski 1993).

export type SegmentsGiven = {
  readonly nodes: readonly string[];
  readonly links: readonly { readonly id: string; readonly a: string; readonly b: string }[];
  readonly valves: readonly { readonly link: string; readonly node: string }[];
};

/** Ids must be known. Nodes first in each, then links, each in input order. */
export function segmentsOf({ nodes, links, valves }: SegmentsGiven): string[][] {
  const nodeAt = new Map(nodes.map((id, at) => [id, at]));
  const parted = new Set(valves.map(({ link, node }) => JSON.stringify([link, node])));
  const above = Array.from({ length: nodes.length + links.length }, (_, at) => at);
  const topOf = (start: number): number => {
    let top = start;
    while (above[top] !== top) {
      // Halving the way up keeps it short.
      above[top] = above[above[top] ?? top] ?? top;
      top = above[top] ?? top;
    }
    return top;
  };
  links.forEach(({ id, a, b }, link) => {
    for (const end of [a, b]) {
      const node = nodeAt.get(end);
      if (node === undefined || parted.has(JSON.stringify([id, end]))) continue;
      const [one, other] = [topOf(node), topOf(nodes.length + link)];
      above[Math.max(one, other)] = Math.min(one, other);
    }
  });
  const found = new Map<number, string[]>();
  above.forEach((_, at) => {
    const top = topOf(at);
    const id = nodes[at] ?? links[at - nodes.length]?.id ?? '';
    const segment = found.get(top);
    if (segment === undefined) found.set(top, [id]);
    else segment.push(id);
  });
  return [...found.values()];
}
