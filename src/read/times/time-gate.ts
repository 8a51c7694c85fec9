import type { LogFile } from '../../model/log-file.js';
import { farMs, isNearRange, isUnsetClock } from './home-times.js';

/** So many times in a row, far from all others, are a part of the log and no slip (own choice). */
export const fewestTimes = 10;
/** So many rows are held back until it is known what they are; then they count as a part of the log. */
export const mostHeldRows = 4096;

export type FarReason = 'far-time' | 'unset-clock';

interface Held<Row> {
  readonly row: Row;
  readonly ms: number;
}

/**
 * Keeps rows out whose time lies years from the rest: a mis-typed year, a clock that was upset or not yet set. Rows far
 * from where the file is at home are held back until what comes after them tells: a part of the log goes on, or ends
 * with the file; after a slip the clock comes back. Bounded memory; rows keep their order.
 */
export class TimeGate<Row> {
  private readonly home: { fromMs: number; toMs: number }[];
  private near: { fromMs: number; toMs: number };
  private readonly order: LogFile['order'];
  private lastMs = NaN;
  private held: Held<Row>[] = [];
  private heldTimes = 0;

  /** @param setAside Told of every row that is left out. */
  constructor(
    { homeMs, order }: Pick<LogFile, 'homeMs' | 'order'>,
    private readonly setAside: (row: Row, reason: FarReason) => void,
  ) {
    this.home = homeMs.map((range) => ({ ...range }));
    this.near = this.home[0] ?? { fromMs: NaN, toMs: NaN };
    this.order = order;
  }

  /** True for a row that can be taken at once, which is nearly every row; all others go to {@link take}. */
  passes(ms: number): boolean {
    const { near } = this;
    if (!(ms >= near.fromMs - farMs && ms <= near.toMs + farMs) || this.held.length > 0) return false;
    this.arrive(ms, near);
    return true;
  }

  /** Takes a row that did not pass; gives the rows that may be taken now, in their order. */
  take(row: Row, ms: number): Row[] {
    const home = this.home.find((range) => isNearRange(ms, range));
    if (home) {
      const rows = [...this.settle(ms), row];
      this.arrive(ms, home);
      return rows;
    }
    if (this.isUnset(ms)) {
      this.setAside(row, 'unset-clock');
      return [];
    }
    const last = this.held.at(-1);
    const rows = last && Math.abs(ms - last.ms) > farMs ? this.settle(NaN) : [];
    if (this.held.at(-1)?.ms !== ms) this.heldTimes++;
    this.held.push({ row, ms });
    return this.held.length < mostHeldRows ? rows : [...rows, ...this.adopt()];
  }

  /** The file is at its end: gives the rows that may still be taken. */
  end(): Row[] {
    return this.settle(NaN);
  }

  private arrive(ms: number, range: { fromMs: number; toMs: number }): void {
    this.near = range;
    this.lastMs = ms;
    if (ms > range.toMs) range.toMs = ms;
    else if (ms < range.fromMs) range.fromMs = ms;
  }

  private isUnset(ms: number): boolean {
    return isUnsetClock(ms) && this.home.every(({ fromMs }) => fromMs > ms + farMs);
  }

  /** Decides on the held rows; `nextMs` is the time of the row at home behind them, NaN for none. */
  private settle(nextMs: number): Row[] {
    if (this.heldTimes >= fewestTimes && !this.isSlip(nextMs)) return this.adopt();
    for (const { row } of this.held) this.setAside(row, 'far-time');
    this.held = [];
    this.heldTimes = 0;
    return [];
  }

  /** After a slip the clock goes on where it was, or against the order of the file. */
  private isSlip(nextMs: number): boolean {
    if (Math.abs(nextMs - this.lastMs) <= farMs) return true;
    const heldMs = this.held[0]!.ms;
    if (this.order === 'rising') return nextMs < heldMs;
    return this.order === 'falling' && nextMs > heldMs;
  }

  private adopt(): Row[] {
    const rows = this.held.map(({ row }) => row);
    const times = this.held.map(({ ms }) => ms);
    this.near = { fromMs: Math.min(...times), toMs: Math.max(...times) };
    this.home.push(this.near);
    this.lastMs = times.at(-1)!;
    this.held = [];
    this.heldTimes = 0;
    return rows;
  }
}
