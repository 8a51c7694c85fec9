/**
 * The one source of chance for everything that is made: the same seed gives the same bytes on every machine.
 * Generator: sfc32 (Chris Doty-Humphrey, PractRand; public domain), seeded through the splitmix32 mixer.
 */
export class Random {
  #a: number;
  #b: number;
  #c: number;
  #counter = 1;
  #spareGauss = NaN;

  constructor(seed: number) {
    let state = seed >>> 0;
    const mix = (): number => {
      state = (state + 0x9e3779b9) | 0;
      let t = state ^ (state >>> 16);
      t = Math.imul(t, 0x21f0aaad);
      t ^= t >>> 15;
      t = Math.imul(t, 0x735a2d97);
      return t ^ (t >>> 15);
    };
    this.#a = mix();
    this.#b = mix();
    this.#c = mix();
    for (let i = 0; i < 12; i++) this.next();
  }

  /** Uniform in [0, 1). */
  next(): number {
    const t = (((this.#a + this.#b) | 0) + this.#counter) | 0;
    this.#counter = (this.#counter + 1) | 0;
    this.#a = this.#b ^ (this.#b >>> 9);
    this.#b = (this.#c + (this.#c << 3)) | 0;
    this.#c = ((this.#c << 21) | (this.#c >>> 11)) + t;
    return (t >>> 0) / 4294967296;
  }

  uniform(from: number, to: number): number {
    return from + (to - from) * this.next();
  }

  /** Whole number from `from` to `to`, both included. */
  int(from: number, to: number): number {
    return from + Math.floor(this.next() * (to - from + 1));
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  /** Uniform on a log scale; both ends above zero. */
  logUniform(from: number, to: number): number {
    return from * Math.exp(Math.log(to / from) * this.next());
  }

  exponential(mean: number): number {
    return -mean * Math.log(1 - this.next());
  }

  /** Standard normal, by the polar method (Marsaglia). */
  gauss(): number {
    if (!Number.isNaN(this.#spareGauss)) {
      const spare = this.#spareGauss;
      this.#spareGauss = NaN;
      return spare;
    }
    for (;;) {
      const x = 2 * this.next() - 1;
      const y = 2 * this.next() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      this.#spareGauss = y * scale;
      return x * scale;
    }
  }

  sign(): 1 | -1 {
    return this.next() < 0.5 ? -1 : 1;
  }

  /** @throws RangeError when the list is empty. */
  pick<T>(list: readonly T[]): T {
    if (list.length === 0) throw new RangeError('Random.pick: the list is empty.');
    return list[Math.floor(this.next() * list.length)] as T;
  }

  /** Picks a key with a chance in proportion to its weight. */
  weighted<K extends string>(weights: Readonly<Partial<Record<K, number>>>): K {
    const entries = Object.entries(weights) as [K, number][];
    const total = entries.reduce((sum, [, weight]) => sum + weight, 0);
    let left = this.next() * total;
    for (const [key, weight] of entries) {
      left -= weight;
      if (left < 0) return key;
    }
    return this.pick(entries)[0];
  }

  /** A generator of its own, so that one part drawing more numbers leaves the other parts as they were. */
  fork(name: string): Random {
    let hash = Math.floor(this.next() * 4294967296);
    for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
    return new Random(hash);
  }
}
