import type { LogColumn } from '../model/log-file.js';

/** °C of a log's number. 0 °C = 273.15 K = 32 °F, by definition of the scales. */
export function toDegC(raw: number, { unit, scale }: Pick<LogColumn, 'unit' | 'scale'>): number {
  const value = raw * scale;
  if (unit === 'degF') return (value - 32) / 1.8;
  return unit === 'K' ? value - 273.15 : value;
}

/** The log's number of a temperature in °C. */
export function fromDegC(degC: number, { unit, scale }: Pick<LogColumn, 'unit' | 'scale'>): number {
  const value = unit === 'degF' ? degC * 1.8 + 32 : unit === 'K' ? degC + 273.15 : degC;
  return value / scale;
}

/** The first `length` places of `values` into °C, in place. */
export function allToDegC(values: Float64Array, length: number, column: Pick<LogColumn, 'unit' | 'scale'>): void {
  if (column.unit === 'degC' && column.scale === 1) return;
  for (let i = 0; i < length; i++) values[i] = toDegC(values[i]!, column);
}

/** The first `length` places of `values` as shares of an output, in percent, in place. */
export function allToPercent(
  values: Float64Array,
  length: number,
  { scale, zero = 0 }: Pick<LogColumn, 'scale' | 'zero'>,
): void {
  if (scale === 1 && zero === 0) return;
  for (let i = 0; i < length; i++) values[i] = (values[i]! - zero) * scale;
}
