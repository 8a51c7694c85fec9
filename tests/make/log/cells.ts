import { cell, type MadeZone, type Plant } from '../made-plant.js';
import { toLogUnit, type LogFormat, type TagNames } from './log-format.js';

/** A number with the log's digits and decimal sign. */
export function numberText(value: number, digits: number, decimal: string): string {
  const text = value.toFixed(digits);
  const plain = text === '-0' || text === '-0.0' || text === '-0.00' ? text.slice(1) : text;
  return decimal === ',' ? plain.replace('.', ',') : plain;
}

/** A full-scale code as cards write it: whatever the digits of the log, the code keeps its own. */
function codeText(code: number, { tenthsAsIntegers, decimal }: LogFormat): string {
  if (tenthsAsIntegers) return String(Math.round(code * 10));
  return decimal === ',' ? String(code).replace('.', ',') : String(code);
}

/** Text of one zone's cells, by row. */
export class ZoneCells {
  readonly #zone: MadeZone;
  readonly #format: LogFormat;
  #lastGood = '';
  #keptSetpointDegC = 0;

  constructor(zone: MadeZone, format: LogFormat) {
    this.#zone = zone;
    this.#format = format;
  }

  isBad(row: number): boolean {
    return this.#zone.state[row] !== cell.good;
  }

  reading(row: number): string {
    const { codes, unit, digits, decimal, tenthsAsIntegers, emptyWord, quality, badValue } = this.#format;
    const state = this.#zone.state[row];
    if (state === cell.good) {
      const value = toLogUnit(this.#zone.readingDegC[row] ?? NaN, unit);
      this.#lastGood = tenthsAsIntegers ? String(Math.round(value * 10)) : numberText(value, digits, decimal);
      return this.#lastGood;
    }
    if (state === cell.missing) return emptyWord;
    if (quality === 'column' && badValue === 'last') return this.#lastGood;
    if (quality === 'column' && badValue === 'blank') return emptyWord;
    if (state === cell.restartZero) return tenthsAsIntegers ? '0' : numberText(0, digits, decimal);
    if (codes.text !== null) return codes.text;
    return codeText(state === cell.aboveScale ? codes.high : codes.low, this.#format);
  }

  setpoint(row: number): string {
    const { unit, digits, decimal, tenthsAsIntegers, offSetpoint, emptyWord } = this.#format;
    if (this.#zone.state[row] === cell.missing) return emptyWord;
    const degC = this.#zone.setpointDegC[row] ?? 0;
    if (degC !== 0) this.#keptSetpointDegC = degC;
    else if (offSetpoint === 'zero' || this.#keptSetpointDegC === 0) return '0';
    const value = toLogUnit(this.#keptSetpointDegC, unit);
    return tenthsAsIntegers ? String(Math.round(value * 10)) : numberText(value, Math.min(1, digits), decimal);
  }

  output(row: number): string {
    const { outputDigits, decimal, tenthsAsIntegers, emptyWord } = this.#format;
    if (this.#zone.state[row] === cell.missing) return emptyWord;
    const percent = this.#zone.outputPercent[row] ?? 0;
    return tenthsAsIntegers ? String(Math.round(percent * 10)) : numberText(percent, outputDigits, decimal);
  }

  quality(row: number): string {
    return this.isBad(row) ? this.#format.qualityWords.bad : this.#format.qualityWords.good;
  }
}

export function tagText(
  zone: string,
  tags: TagNames,
  which: 'reading' | 'setpoint' | 'output',
  unit: 'C' | 'F',
): string {
  const name = placed(zone, tags, tags[which]);
  if (tags.unitStyle === '') return name;
  if (which === 'output') return tags.unitStyle === 'round' ? `${name} (%)` : `${name} [%]`;
  return tags.unitStyle === 'round' ? `${name} (°${unit})` : `${name} [deg${unit}]`;
}

function placed(zone: string, { joiner, place }: TagNames, word: string): string {
  if (zone === '') return word;
  if (place === 'brackets') return `${zone} [${word}]`;
  return place === 'before' ? `${word}${joiner}${zone}` : `${zone}${joiner}${word}`;
}

export function runningText(plant: Plant, machine: number, row: number): string {
  const { runStyle, runWords, fullSpeed } = plant.parameters.format;
  const made = plant.machines[machine];
  const runs = made?.running[row] === 1;
  if (runStyle === 'word') return runs ? runWords.running : runWords.stopped;
  if (runStyle === 'speed') return String(Math.round((made?.speed[row] ?? 0) * fullSpeed));
  return runs ? '1' : '0';
}

/** "Running" for a single machine, "M1 Running" for several. */
export function runningName(plant: Plant, machine: number): string {
  const { runName, tags } = plant.parameters.format;
  if (plant.machines.length === 1) return runName;
  const joiner = tags.joiner.trim() === '' ? ' ' : tags.joiner;
  return `${plant.machines[machine]?.name ?? ''}${joiner}${runName}`;
}
