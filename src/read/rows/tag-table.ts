import type { CellBounds } from './cell-bounds.js';

/** Finds the number of a tag from its bytes without making a string. */
export class TagTable {
  /** Number of the tag that `skim` or `find` found last; -1 = none. */
  number = -1;
  private readonly names: Buffer[] = [];
  /** By tag: the tag that came behind it the last time. Logs write their tags round and round. */
  private readonly next: number[] = [];
  /** False for names that cannot stand in a cell as they are. */
  private readonly isPlain: boolean[] = [];
  private slots = new Int32Array(256).fill(-1);

  constructor(private readonly bounds: CellBounds) {}

  /**
   * Looks whether the cell at `start` is the tag that is to be expected.
   *
   * @returns Behind its last byte, `number` set; -1 when another stands there.
   */
  skim(bytes: Buffer, start: number): number {
    const guess = this.number < 0 ? -1 : this.next[this.number]!;
    if (guess < 0 || !this.isPlain[guess]) return -1;
    const name = this.names[guess]!;
    for (let i = 0; i < name.length; i++) if (name[i] !== bytes[start + i]) return -1;
    const end = start + name.length;
    if (!this.bounds.isEnd(bytes[end]!)) return -1; // a longer name begins alike
    this.number = guess;
    return end;
  }

  /** Number of the tag, -1 when it is not in the table. */
  find(bytes: Buffer, start: number, end: number): number {
    const mask = this.slots.length - 1;
    for (let slot = hash(bytes, start, end) & mask; ; slot = (slot + 1) & mask) {
      const found = this.slots[slot]!;
      if (found < 0) return -1;
      if (!isEqual(this.names[found]!, bytes, start, end)) continue;
      if (this.number >= 0) this.next[this.number] = found;
      this.number = found;
      return found;
    }
  }

  /** Adds a tag that is not yet there; its number is the count of tags before it. */
  add(bytes: Buffer): number {
    const number = this.names.push(bytes) - 1;
    this.next.push(-1);
    this.isPlain.push(this.bounds.isPlain(bytes));
    if (this.names.length * 2 > this.slots.length) this.grow();
    else this.place(number);
    return number;
  }

  private grow(): void {
    this.slots = new Int32Array(this.slots.length * 4).fill(-1);
    for (let number = 0; number < this.names.length; number++) this.place(number);
  }

  private place(number: number): void {
    const name = this.names[number]!;
    const mask = this.slots.length - 1;
    let slot = hash(name, 0, name.length) & mask;
    while (this.slots[slot]! >= 0) slot = (slot + 1) & mask;
    this.slots[slot] = number;
  }
}

/** FNV-1a, 32 bits (Fowler, Noll, Vo; constants from memory). Only the spread matters, not the value. */
function hash(bytes: Buffer, start: number, end: number): number {
  let sum = 0x811c9dc5;
  for (let i = start; i < end; i++) sum = Math.imul(sum ^ bytes[i]!, 0x01000193);
  return sum ^ (sum >>> 15);
}

function isEqual(name: Buffer, bytes: Buffer, start: number, end: number): boolean {
  if (name.length !== end - start) return false;
  for (let i = 0; i < name.length; i++) if (name[i] !== bytes[start + i]) return false;
  return true;
}
