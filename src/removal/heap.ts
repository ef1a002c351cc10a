// A small binary heap of numbers by key, the smallest first.

/** Entries gone stale are skipped by the caller. */
export class Heap {
  private readonly keys: number[] = [];
  private readonly items: number[] = [];

  get size(): number {
    return this.items.length;
  }

  push(key: number, item: number): void {
    let at = this.items.length;
    this.keys.push(key);
    this.items.push(item);
    while (at > 0) {
      const up = (at - 1) >> 1;
      if ((this.keys[up] ?? 0) <= key) break;
      this.keys[at] = this.keys[up] ?? 0;
      this.items[at] = this.items[up] ?? 0;
      at = up;
    }
    this.keys[at] = key;
    this.items[at] = item;
  }

  pop(): number {
    const top = this.items[0] ?? -1;
    const key = this.keys.pop() ?? 0;
    const item = this.items.pop() ?? 0;
    const size = this.items.length;
    if (size === 0) return top;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= size) break;
      if (down + 1 < size && (this.keys[down + 1] ?? 0) < (this.keys[down] ?? 0)) down += 1;
      if ((this.keys[down] ?? 0) >= key) break;
      this.keys[at] = this.keys[down] ?? 0;
      this.items[at] = this.items[down] ?? 0;
      at = down;
    }
    this.keys[at] = key;
    this.items[at] = item;
    return top;
  }
}
