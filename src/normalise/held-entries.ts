import type { LogFile, TagBatch } from '../model/log-file.js';

/** Entries of a file that is not in time order, kept until they can be sorted. */
export class HeldEntries {
  length = 0;
  private clockMs = new Float64Array(4096);
  private tag = new Int32Array(4096);
  private value = new Float64Array(4096);
  private mark = new Uint8Array(4096);
  private line = new Float64Array(4096);

  /** Keeps the first entries of a batch, at most so many; returns how many. */
  add(batch: TagBatch, most: number): number {
    const count = Math.min(batch.length, most);
    const from = this.length;
    this.length += count;
    while (this.length > this.clockMs.length) this.grow();
    this.clockMs.set(batch.clockMs.subarray(0, count), from);
    this.tag.set(batch.tag.subarray(0, count), from);
    this.value.set(batch.value.subarray(0, count), from);
    this.mark.set(batch.mark.subarray(0, count), from);
    this.line.set(batch.line.subarray(0, count), from);
    return count;
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

  /**
   * Turns the clocks into UTC and gives the places of all entries by time; entries of one time keep their order, or turn
   * it round for a file that falls.
   *
   * @param toUtc Turns the log's clock into UTC. It must see the clock as it ran, to tell the two turns of the hour that
   *   is repeated in autumn: so before sorting, but for a file without order, where nothing could tell them.
   */
  inOrder(order: LogFile['order'], toUtc: (clockMs: number) => number): Uint32Array {
    const { clockMs, length } = this;
    const isFalling = order === 'falling';
    const places = new Uint32Array(length);
    for (let i = 0; i < length; i++) places[i] = isFalling ? length - 1 - i : i;
    if (order !== 'mixed') for (const i of places) clockMs[i] = toUtc(clockMs[i]!);
    // Sorting is stable, so a file that only falls is turned round and nothing more.
    if (!isRising(places, clockMs)) places.sort((a, b) => clockMs[a]! - clockMs[b]! || (isFalling ? b - a : a - b));
    if (order === 'mixed') for (const i of places) clockMs[i] = toUtc(clockMs[i]!);
    return places;
  }

  /** Puts the entries at these places into a batch that has room for them. */
  copy(places: Uint32Array, into: TagBatch): void {
    into.length = places.length;
    places.forEach((place, i) => {
      into.clockMs[i] = this.clockMs[place]!;
      into.tag[i] = this.tag[place]!;
      into.value[i] = this.value[place]!;
      into.mark[i] = this.mark[place]!;
      into.line[i] = this.line[place]!;
    });
  }
}

function isRising(places: Uint32Array, clockMs: Float64Array): boolean {
  for (let i = 1; i < places.length; i++) if (clockMs[places[i]!]! < clockMs[places[i - 1]!]!) return false;
  return true;
}
