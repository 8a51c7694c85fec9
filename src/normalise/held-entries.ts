/** Entries of a file that is not in time order, kept until they can be sorted. */
export class HeldEntries {
  length = 0;
  private clockMs = new Float64Array(4096);
  private tag = new Int32Array(4096);
  private value = new Float64Array(4096);
  private mark = new Uint8Array(4096);
  private line = new Float64Array(4096);

  add(clockMs: number, tag: number, value: number, mark: number, line: number): void {
    if (this.length === this.clockMs.length) this.grow();
    const i = this.length++;
    this.clockMs[i] = clockMs;
    this.tag[i] = tag;
    this.value[i] = value;
    this.mark[i] = mark;
    this.line[i] = line;
  }

  private grow(): void {
    const size = this.clockMs.length * 2;
    const wider = <T extends Float64Array | Int32Array | Uint8Array>(old: T, made: T): T => (made.set(old), made);
    this.clockMs = wider(this.clockMs, new Float64Array(size));
    this.tag = wider(this.tag, new Int32Array(size));
    this.value = wider(this.value, new Float64Array(size));
    this.mark = wider(this.mark, new Uint8Array(size));
    this.line = wider(this.line, new Float64Array(size));
  }

  /** Hands out all entries by time; entries of one time keep their order, or turn it round for a file that falls. */
  inOrder(
    isFalling: boolean,
    take: (clockMs: number, tag: number, value: number, mark: number, line: number) => void,
  ): void {
    const { clockMs, length } = this;
    const places = new Uint32Array(length);
    for (let i = 0; i < length; i++) places[i] = isFalling ? length - 1 - i : i;
    // Sorting is stable, so a file that only falls is turned round and nothing more.
    if (!isRising(places, clockMs)) places.sort((a, b) => clockMs[a]! - clockMs[b]! || (isFalling ? b - a : a - b));
    for (const i of places) take(clockMs[i]!, this.tag[i]!, this.value[i]!, this.mark[i]!, this.line[i]!);
  }
}

function isRising(places: Uint32Array, clockMs: Float64Array): boolean {
  for (let i = 1; i < places.length; i++) if (clockMs[places[i]!]! < clockMs[places[i - 1]!]!) return false;
  return true;
}
