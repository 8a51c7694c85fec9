import type { LogColumn, LogFile } from '../../model/log-file.js';

/** What to do with a cell. */
export const act = { skip: 0, number: 1, time: 2, date: 3, clock: 4, tag: 5, quality: 6, running: 7, flag: 8 } as const;

/**
 * What becomes of each cell of a row, and the arrays that hold the numbers of a batch. All numbers stand in one array,
 * column behind column, so that the hot loop writes to one place: `numbers[firstPlace[c] + at]`.
 */
export interface RowPlan {
  readonly columnCount: number;
  /** One of {@link act} per column. */
  readonly actions: Uint8Array;
  /** Running columns: the machine runs when the number is above this. */
  readonly above: Float64Array;
  readonly numbers: Float64Array;
  /** Where the numbers of a column begin. */
  readonly firstPlace: Int32Array;
  /** By column: behind the columns of numbers that begin here. The last cell of a row is in no run: the line ends behind it. */
  readonly runEnd: Int32Array;
  /** Parts of `numbers`, one per column that anybody reads. */
  readonly values: readonly (Float64Array | null)[];
  readonly marks: readonly (Uint8Array | null)[];
  readonly hasClock: boolean;
}

/** Numbers between two columns: columns a power of two apart would share their places in the processor's cache. */
const gapPlaces = 8;

/** @param capacity Rows of a batch. */
export function planRow(file: LogFile, capacity: number): RowPlan {
  const columnCount = Math.max(file.header.length, ...file.columns.map((column) => column.index + 1));
  const actions = new Uint8Array(columnCount);
  const above = new Float64Array(columnCount);
  const marks: (Uint8Array | null)[] = new Array(columnCount).fill(null);
  const kept = new Set<number>();
  for (const column of file.columns) {
    actions[column.index] = actionOf(column);
    above[column.index] = column.above;
    if (isKept(column)) kept.add(column.index);
    if (column.role === 'reading' || column.role === 'value') marks[column.index] = new Uint8Array(capacity);
  }
  for (const c of file.noValue?.columns ?? []) {
    if (!kept.has(c)) actions[c] = act.number;
    kept.add(c);
  }
  const hasClock = actions.includes(act.clock);
  return {
    columnCount,
    actions,
    above,
    marks,
    hasClock,
    runEnd: runEnds(actions),
    ...layOut(columnCount, kept, capacity),
  };
}

function runEnds(actions: Uint8Array): Int32Array {
  const ends = Int32Array.from(actions.keys());
  for (let c = actions.length - 2; c >= 0; c--) if (actions[c] === act.number) ends[c] = Math.max(c + 1, ends[c + 1]!);
  return ends;
}

function layOut(
  columnCount: number,
  kept: ReadonlySet<number>,
  capacity: number,
): Pick<RowPlan, 'numbers' | 'firstPlace' | 'values'> {
  const numbers = new Float64Array(kept.size * (capacity + gapPlaces));
  const firstPlace = new Int32Array(columnCount);
  const values: (Float64Array | null)[] = new Array(columnCount).fill(null);
  let place = 0;
  for (const c of kept) {
    firstPlace[c] = place;
    values[c] = numbers.subarray(place, place + capacity);
    place += capacity + gapPlaces;
  }
  return { numbers, firstPlace, values };
}

function actionOf({ role }: LogColumn): number {
  switch (role) {
    case 'time':
      return act.time;
    case 'date':
      return act.date;
    case 'clock':
      return act.clock;
    case 'tag':
      return act.tag;
    case 'quality':
      return act.quality;
    case 'running':
      return act.running;
    case 'alarm':
      return act.flag;
    case 'day':
    case 'ignored':
      return act.skip;
    default:
      return act.number;
  }
}

function isKept({ role }: LogColumn): boolean {
  return (
    role === 'reading' ||
    role === 'setpoint' ||
    role === 'output' ||
    role === 'running' ||
    role === 'alarm' ||
    role === 'value'
  );
}
