import type { ClockDay, LogFile, TimeFormat, TimePlace } from '../../model/log-file.js';
import type { ColumnFacts } from './column-facts.js';
import type { OwnQuality } from './own-qualities.js';
import type { SampledRow } from '../sources/sampled-row.js';

/** Where things stand in a file, before anybody asks what they mean. */
export interface FileShape extends TimePlace {
  readonly firstDataLine: number;
  readonly hasHeader: boolean;
  readonly header: readonly string[];
  /** Cells of a row of units under the header; empty where there is none. */
  readonly units: readonly string[];
  /** Lines before the header. */
  readonly preamble: readonly string[];
  readonly time: TimeFormat;
  /** Which day each row is of, where rows hold times of day only. */
  readonly days?: readonly ClockDay[];
  readonly layout: LogFile['layout'];
  /** -1 = none. */
  readonly tagColumn: number;
  /** Long: the column that names the machine of each row; absent = none. */
  readonly machineColumn?: number;
  /** Long: the column that names the zone of each row, where the tag says the role only; absent = none. */
  readonly zoneColumn?: number;
  readonly qualityColumn: number;
  /** Wide: columns that each say what another is worth; then there is no quality of the row. */
  readonly ownQualities: readonly OwnQuality[];
  /** Long: the columns that hold values. */
  readonly valueColumns: readonly number[];
  /** Cells of a whole row. */
  readonly rowWidth: number;
  readonly rows: readonly SampledRow[];
  readonly columns: readonly ColumnFacts[];
}
