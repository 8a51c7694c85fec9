interface Timed {
  readonly place: number;
  readonly atMs: number;
}

/** Gives back what was put in by its time, earliest first, equal times in order of `place`; a binary heap. */
export class EarliestFirst<T extends Timed> {
  private readonly heap: T[] = [];

  /** The earliest; undefined when empty. */
  get first(): T | undefined {
    return this.heap[0];
  }

  add(item: T): void {
    const { heap } = this;
    heap.push(item);
    for (let at = heap.length - 1; at > 0;) {
      const parent = (at - 1) >> 1;
      if (!isBefore(item, heap[parent]!)) return;
      heap[at] = heap[parent]!;
      heap[parent] = item;
      at = parent;
    }
  }

  /** Puts the earliest in order again after its time has grown. */
  settleFirst(): void {
    const { heap } = this;
    const item = heap[0]!;
    for (let at = 0; ;) {
      let child = 2 * at + 1;
      if (child + 1 < heap.length && isBefore(heap[child + 1]!, heap[child]!)) child++;
      if (child >= heap.length || !isBefore(heap[child]!, item)) return;
      heap[at] = heap[child]!;
      heap[child] = item;
      at = child;
    }
  }

  removeFirst(): void {
    const last = this.heap.pop()!;
    if (this.heap.length === 0) return;
    this.heap[0] = last;
    this.settleFirst();
  }
}

function isBefore(a: Timed, b: Timed): boolean {
  return a.atMs < b.atMs || (a.atMs === b.atMs && a.place < b.place);
}
