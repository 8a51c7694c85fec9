/** Finds the number of a tag from its bytes without making a string. */
export class TagTable {
  private readonly names: Buffer[] = [];
  private slots = new Int32Array(256).fill(-1);

  /** Number of the tag, -1 when it is not in the table. */
  find(bytes: Buffer, start: number, end: number): number {
    const mask = this.slots.length - 1;
    for (let slot = hash(bytes, start, end) & mask; ; slot = (slot + 1) & mask) {
      const number = this.slots[slot]!;
      if (number < 0) return -1;
      if (isEqual(this.names[number]!, bytes, start, end)) return number;
    }
  }

  /** Adds a tag that is not yet there; its number is the count of tags before it. */
  add(bytes: Buffer): number {
    const number = this.names.push(bytes) - 1;
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
