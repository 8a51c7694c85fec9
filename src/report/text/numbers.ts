const noBreak = '\u00A0';

/** A number for people: fixed digits, a real minus sign, blanks between thousands; "–" when it is not finite. */
export function numberText(value: number, digits = 0): string {
  if (!Number.isFinite(value)) return '–';
  const fixed = Math.abs(value).toFixed(digits);
  const [whole = '0', decimals] = fixed.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, noBreak) : whole;
  const sign = value < 0 && Number(fixed) !== 0 ? '−' : '';
  return `${sign}${grouped}${decimals === undefined ? '' : `.${decimals}`}`;
}

/** Number and unit, kept on one line. */
export function withUnit(value: number, unit: string, digits = 0): string {
  return `${numberText(value, digits)}${noBreak}${unit}`;
}

/** Two figures that count, and no empty decimals: 0.05, 1.4, 28, 1 300. */
export function shortNumber(value: number): string {
  if (!Number.isFinite(value) || value === 0) return numberText(value);
  const digits = Math.min(9, Math.max(0, 1 - Math.floor(Math.log10(Math.abs(value)))));
  return numberText(value, digits).replace(/\.(\d*?)0+$/, (_, kept: string) => (kept === '' ? '' : `.${kept}`));
}

/** Whole percent of a share; never rounds a real doubt to 0 or 100. */
export function percentText(share: number): string {
  if (share > 0 && share < 0.01) return `<${noBreak}1${noBreak}%`;
  if (share < 1 && share > 0.99) return `>${noBreak}99${noBreak}%`;
  return withUnit(share * 100, '%');
}

/** Whole percents of a row of shares that sum to 100: the largest remainders are rounded up (Hamilton's rule). */
export function wholePercents(shares: readonly number[]): readonly number[] {
  const exact = shares.map((share) => share * 100);
  const floors = exact.map(Math.floor);
  const left = Math.round(exact.reduce((sum, value) => sum + value, 0)) - floors.reduce((sum, value) => sum + value, 0);
  const byRemainder = exact.map((value, i) => [value - floors[i]!, i] as const).sort((a, b) => b[0] - a[0]);
  for (const [, i] of byRemainder.slice(0, Math.max(0, left))) floors[i]!++;
  return floors;
}

/** Minutes as a person says them: "45 min", "3 h 32 min", "2 d 4 h". */
export function minutesText(minutes: number): string {
  if (!Number.isFinite(minutes)) return '–';
  if (minutes > 0 && minutes < 1) return withUnit(minutes * 60, 's');
  const whole = Math.round(minutes);
  if (whole < 60) return withUnit(whole, 'min');
  const hours = Math.floor(whole / 60);
  if (hours < 48) return joinTwo(withUnit(hours, 'h'), whole % 60, 'min');
  return joinTwo(withUnit(Math.floor(hours / 24), 'd'), hours % 24, 'h');
}

/** Minutes as one number for a chart's label: "45 min", "8.7 h". */
export function hoursText(minutes: number): string {
  return minutes < 60 ? minutesText(minutes) : withUnit(minutes / 60, 'h', minutes < 6000 ? 1 : 0);
}

export function secondsText(seconds: number): string {
  if (!Number.isFinite(seconds)) return '–';
  if (seconds < 120) return withUnit(seconds, 's', seconds < 10 && !Number.isInteger(seconds) ? 1 : 0);
  return minutesText(seconds / 60);
}

/** Ohms with the prefix a meter shows. */
export function ohmText(ohm: number, digits = 1): string {
  if (Math.abs(ohm) >= 1e6) return withUnit(ohm / 1e6, 'MΩ', 0);
  if (Math.abs(ohm) >= 1e4) return withUnit(ohm / 1e3, 'kΩ', 1);
  return withUnit(ohm, 'Ω', digits);
}

/** "1 zone", "3 zones". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${numberText(count)}${noBreak}${count === 1 ? one : many}`;
}

/** "a", "a and b", "a, b and c". */
export function listText(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)!}`;
}

function joinTwo(first: string, rest: number, unit: string): string {
  return rest === 0 ? first : `${first} ${withUnit(rest, unit)}`;
}
