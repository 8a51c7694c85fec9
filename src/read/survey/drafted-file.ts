import type { GoodStatus, LogFile, TimePlace } from '../../model/log-file.js';
import type { RoledSeries } from '../columns/column-roles.js';
import { sampledClock } from '../columns/series.js';
import type { FileShape } from '../layout/file-shape.js';
import type { RowSource } from '../sources/table-part.js';
import { layoutText } from './layout-text.js';
import type { Timing } from './timing.js';

/** A file half understood: its rows and columns are known, but not yet which zones they make. */
export interface DraftFile {
  readonly name: string;
  readonly kind: LogFile['kind'];
  /** For files that are not temperature logs this is final. */
  readonly file: LogFile;
  readonly preamble: readonly string[];
  readonly roled: readonly RoledSeries[];
  /** Without its sampled rows once they have been looked at: hundreds of files are held side by side. */
  readonly shape: FileShape | null;
  readonly firstMs: number;
  readonly lastMs: number;
  readonly samplingMs: number;
  readonly isChangeLogged: boolean;
}

/** A file and how it is cut into rows. */
export type Base = RowSource & Pick<LogFile, 'sizeBytes'>;

/** A file that is no temperature log, or not read at all. */
export function plainDraft(base: Base, kind: LogFile['kind'], why: string, shape: FileShape | null): DraftFile {
  const known = shape ? sampledClock(shape).filter((ms) => !Number.isNaN(ms)) : [];
  const firstMs = known.reduce((a, b) => Math.min(a, b), Infinity);
  const timing = { ...noTiming, firstMs: Number.isFinite(firstMs) ? firstMs : NaN };
  const file = draftedFile(base, kind, why, shape, timing);
  return { name: base.name, kind, file, preamble: shape?.preamble ?? [], roled: [], shape: null, ...timing };
}

const noTiming: Timing = {
  firstMs: NaN,
  lastMs: NaN,
  homeMs: [],
  samplingMs: NaN,
  order: 'rising',
  isChangeLogged: false,
  holdMs: NaN,
  silenceMs: NaN,
};

const noTime: LogFile['time'] = {
  kind: 'date',
  order: 'ymd',
  unitMs: 1,
  isAbsolute: false,
  isUndecided: false,
  why: 'no times',
};

/** What is known of a file before its columns are. */
export function draftedFile(
  base: Base,
  kind: LogFile['kind'],
  why: string,
  shape: FileShape | null,
  timing: Timing,
): LogFile {
  return {
    ...base,
    ...timing,
    ...{ rowWidth: shape?.rowWidth ?? 0, goodStatus: shape ? goodStatus(shape) : 'opc' },
    ...{ kind, why, columns: [], tags: [], notes: [], typicalDegC: NaN, layoutText: layoutText(base, shape, timing) },
    ...{
      layout: shape?.layout ?? 'none',
      header: shape?.header ?? [],
      firstDataLine: shape?.firstDataLine ?? 1,
      time: shape?.time ?? noTime,
      ...(shape && hasParts(shape) ? { timePlace: placeOf(shape) } : {}),
      ...(shape?.days ? { days: shape.days } : {}),
      ...(shape?.machineColumn === undefined ? {} : { machineColumn: shape.machineColumn }),
      ...(shape?.zoneColumn === undefined ? {} : { zoneColumn: shape.zoneColumn }),
    },
  };
}

function hasParts({ dateParts, clockParts }: FileShape): boolean {
  return dateParts.length + clockParts.length > 0;
}

function placeOf({ timeColumn, clockColumn, dateParts, clockParts }: FileShape): TimePlace {
  return { timeColumn, clockColumn, dateParts, clockParts };
}

/** No log is mostly bad: 0 is good where most cells are 0, and 1 where most are 1 and the others 0. */
function goodStatus({ rows, qualityColumn, ownQualities }: FileShape): GoodStatus {
  const columns = [qualityColumn, ...ownQualities.map(({ column }) => column)];
  const cells = rows
    .flatMap((row) => columns.map((column) => row.cells[column]?.trim() ?? ''))
    .filter((cell) => cell !== '');
  const zeros = cells.filter((cell) => /^(0x0+|0+)(\.0+)?$/i.test(cell)).length;
  if (zeros * 2 > cells.length) return 'zero';
  const ones = cells.filter((cell) => /^1(\.0+)?$/.test(cell)).length;
  return ones > 0 && zeros + ones === cells.length ? 'one' : 'opc';
}
