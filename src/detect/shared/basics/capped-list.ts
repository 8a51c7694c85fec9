import type { Episode } from '../../../model/detector.js';

/** Episodes kept per zone and watcher; a log that gives more is not read better by keeping them (own choice). */
const MOST_EPISODES = 20_000;

/** Items in time order of which only the first `MOST_EPISODES` are kept; the rest are counted. */
export class CappedList<T> {
  readonly items: T[] = [];
  leftOutCount = 0;

  constructor(private readonly most = MOST_EPISODES) {}

  push(item: T): void {
    if (this.items.length < this.most) this.items.push(item);
    else this.leftOutCount++;
  }

  copy(): CappedList<T> {
    const copied = new CappedList<T>(this.most);
    copied.pushAll(this);
    return copied;
  }

  /** Takes in what a later piece of the log gave. */
  pushAll(later: CappedList<T>): void {
    for (const item of later.items) this.push(item);
    this.leftOutCount += later.leftOutCount;
  }
}

/** The episodes, with `leftOutCount` in the facts of the last one where some were not kept. */
export function withLeftOut(episodes: readonly Episode[], leftOutCount: number): readonly Episode[] {
  const last = episodes.at(-1);
  if (!last || leftOutCount === 0) return episodes;
  return [...episodes.slice(0, -1), { ...last, facts: { ...last.facts, leftOutCount } }];
}

/** Facts without those that are not finite: what is not known is left out, not guessed. */
export function finiteFacts(facts: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => Number.isFinite(value)));
}
