const dayMs = 86_400_000;
/** Steps that loggers use, in ms (common practice). */
const gridsMs = [100, 200, 250, 500, 1000, 2000, 5000, 10_000, 15_000, 20_000, 30_000, 60_000];
/** Times fit a grid by chance less often than this (own choice). */
const largestChance = 1e-3;

/**
 * The grid on which rounded spreadsheet days stood before they were rounded: six decimals of a day are 0.0864 s, so a
 * step of 10 s shows as 9.936 or 10.022 s.
 *
 * @param cells Days as they are written, such as "46021.916782" or "46021,91678".
 * @returns The finest grid, in ms, that every time fits within its rounding and would hardly fit by chance; NaN for none.
 */
export function gridOfDays(cells: readonly string[]): number {
  const distinct = [...new Set(cells.map((cell) => cell.trim().replace(',', '.')))];
  const decimals = distinct.reduce((most, cell) => Math.max(most, cell.split('.')[1]?.length ?? 0), 0);
  // A number of this size holds some hundredths of a ms.
  return gridOf(
    distinct.map((cell) => Number(cell) * dayMs),
    decimals,
    0.1,
  );
}

/** Days rounded to so many decimals are met: fewer are minutes off, more less than a ms. */
const decimalsMet = [3, 4, 5, 6];
/** A time of a workbook comes as whole ms, cut off, and as a whole second where it is next to one. */
const cutMs = 2;

/**
 * The same for times that a workbook shows as dates, whose decimals are not seen: they are the fewest with which every
 * time is a rounded day.
 *
 * @param timesMs In whole ms, counted from any midnight.
 */
export function gridOfRoundedDates(timesMs: readonly number[]): number {
  const distinct = [...new Set(timesMs)];
  if (distinct.every((ms) => ms % 1000 === 0)) return NaN;
  const isRounded = (decimals: number): boolean => {
    const stepMs = dayMs * 10 ** -decimals;
    return distinct.every((ms) => Math.abs(ms - Math.round(ms / stepMs) * stepMs) <= cutMs);
  };
  const decimals = decimalsMet.find(isRounded);
  return decimals === undefined ? NaN : gridOf(distinct, decimals, cutMs);
}

function gridOf(timesMs: readonly number[], decimals: number, slackMs: number): number {
  const roundingMs = 0.5 * 10 ** -decimals * dayMs;
  if (roundingMs < 0.5) return NaN;
  const fits = (gridMs: number): boolean =>
    (2 * (roundingMs + slackMs)) / gridMs < largestChance ** (1 / timesMs.length) &&
    timesMs.every((ms) => Math.abs(ms - Math.round(ms / gridMs) * gridMs) <= roundingMs + slackMs);
  return gridsMs.find(fits) ?? NaN;
}
