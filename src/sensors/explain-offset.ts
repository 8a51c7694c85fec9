import { say } from './answer.js';
import type { Explanation, OffsetExplained, OffsetQuestion } from './explanation.js';
import { explainThermocouple } from './explain-thermocouple.js';
import { judgeSeries, judgeShunt, seriesOhmFor, shuntOhmFor, type OhmReason } from './offset-ohms.js';
import { rtdOhm } from './rtd.js';
import type { Wires } from './rtd-wiring.js';
import type { RtdSpec } from './sensor-types.js';
import { toleranceDegC, usualClass } from './tolerance.js';
import { mixUpsThatRead } from './wrong-type.js';

/**
 * Which wiring, mix-up or shift would turn `trueDegC` into `readingDegC`, and what is ruled out and why.
 *
 * Exact circuit arithmetic on the sensor's own curve. Never throws; off the table it says so.
 */
export function explainOffset(question: OffsetQuestion): OffsetExplained {
  const { sensor, trueDegC, readingDegC } = question;
  const offsetDegC = readingDegC - trueDegC;
  const nothing = { offsetDegC, expectedOhm: null, seenOhm: null, seriesOhm: null, shuntOhm: null };
  const within = withinTolerance(question);
  if (sensor.kind === 'current') return { ...nothing, explanations: within ?? [loopIgnoresOhms()] };
  if (sensor.kind === 'thermocouple') {
    return { ...nothing, explanations: within ?? explainThermocouple(sensor, question) };
  }
  const element = rtdOhm(sensor, trueDegC);
  const seen = rtdOhm(sensor, readingDegC);
  if (!element.ok || !seen.ok) {
    const says = element.ok ? (seen.ok ? '' : seen.says) : element.says;
    return { ...nothing, explanations: [{ reason: 'off-the-table', sensible: false, points: null, says, ohm: null }] };
  }
  const ohms = { ...nothing, expectedOhm: element.ohm, seenOhm: seen.ohm };
  return within ? { ...ohms, explanations: within } : explainRtd(sensor, question, ohms);
}

function explainRtd(
  sensor: RtdSpec,
  question: OffsetQuestion,
  ohms: Omit<OffsetExplained, 'explanations'>,
): OffsetExplained {
  const { trueDegC, readingDegC, wires = 3 } = question;
  const inSeries = seriesExplanation(sensor, wires, trueDegC, readingDegC);
  const inParallel = leakExplanation(sensor, trueDegC, readingDegC);
  const found = [inSeries, inParallel, ...mixUps(question), elementShifted()];
  return {
    ...ohms,
    seriesOhm: inSeries.sensible ? inSeries.ohm : null,
    shuntOhm: inParallel.sensible ? inParallel.ohm : null,
    explanations: sensibleFirst(found),
  };
}

function seriesExplanation(sensor: RtdSpec, wires: Wires, trueDegC: number, readingDegC: number): Explanation {
  const series = seriesOhmFor(sensor, trueDegC, readingDegC);
  const seriesOhm = series.ok ? series.seriesOhm : NaN;
  const { sensible, reason } = judgeSeries(wires, seriesOhm);
  return { reason, sensible, points: sensible ? 'wiring' : null, says: ohmSentence(reason, seriesOhm), ohm: seriesOhm };
}

function leakExplanation(sensor: RtdSpec, trueDegC: number, readingDegC: number): Explanation {
  const shunt = shuntOhmFor(sensor, trueDegC, readingDegC);
  if (!shunt.ok) {
    return { reason: 'leak-cannot-read-high', sensible: false, points: null, says: shunt.says, ohm: null };
  }
  const { sensible, reason } = judgeShunt(sensor, shunt.shuntOhm);
  const says = ohmSentence(reason, shunt.shuntOhm);
  return { reason, sensible, points: sensible ? 'wiring' : null, says, ohm: shunt.shuntOhm };
}

/** The sentence of one judgement, with the ohms in it. */
function ohmSentence(reason: OhmReason, ohm: number): string {
  const size = sizeText(Math.abs(ohm));
  const sentences: Readonly<Record<OhmReason, string>> = {
    'fits-both-leads': `${size} too much in the two leads would do it: a loose or corroded terminal, or a thin, long cable.`,
    'fits-lead-1': `${size} more in lead 1 (the single one) than in lead 2 would do it: a loose or corroded terminal.`,
    'fits-lead-2': `${size} more in lead 2 (the compensating one) than in lead 1 would do it: a loose or corroded terminal.`,
    'fits-leak': `A leak of ${size} across the element would do it: wet terminals or failed insulation.`,
    'series-cannot-read-low': 'Resistance in series cannot make a 2-wire RTD read low.',
    'leak-cannot-read-high': 'A path in parallel can only make an RTD read low, never high.',
    'four-wire-cancels-leads':
      'With 4 wires the resistance of the leads does not count, so a lead does not explain it.',
    'more-than-a-contact': `${size} is more than a loose terminal adds: look for a wire about to break, or another sensor type.`,
    'nearly-a-short': `It would take ${size} across the element, a short in all but name.`,
    'no-offset': 'There is no offset to explain.',
  };
  return sentences[reason];
}

function mixUps({ sensor, trueDegC, readingDegC, withinDegC = 2, terminalDegC }: OffsetQuestion): Explanation[] {
  return mixUpsThatRead(sensor, trueDegC, readingDegC, withinDegC, terminalDegC).map(
    ({ fitted, readingDegC: degC }) => ({
      reason: 'other-type-fitted',
      sensible: true,
      points: 'input',
      says: `${fitted.label} on an input set for ${sensor.label} would read ${say(degC, 1)} °C: check the type set on the card.`,
      ohm: null,
    }),
  );
}

function withinTolerance(question: OffsetQuestion): Explanation[] | undefined {
  const { sensor, trueDegC, readingDegC, toleranceClass = usualClass(sensor) } = question;
  if (!toleranceClass) return undefined;
  const tolerance = toleranceDegC(sensor, toleranceClass, trueDegC);
  if (!tolerance.ok || Math.abs(readingDegC - trueDegC) > tolerance.toleranceDegC) return undefined;
  const says = `That is within the tolerance of ±${say(tolerance.toleranceDegC, 2)} °C: nothing to explain.`;
  return [{ reason: 'within-tolerance', sensible: true, points: 'none', says, ohm: null }];
}

function elementShifted(): Explanation {
  const says = 'The element itself may have shifted: compare with a good sensor at the same temperature.';
  return { reason: 'element-shifted', sensible: true, points: 'sensor', says, ohm: null };
}

function loopIgnoresOhms(): Explanation {
  const says =
    'A current loop holds its current whatever the lead resistance, until its supply voltage is used up: check the ' +
    'span set on transmitter and card, then the sensor behind the transmitter.';
  return { reason: 'loop-ignores-ohms', sensible: false, points: null, says, ohm: null };
}

function sensibleFirst(found: readonly Explanation[]): readonly Explanation[] {
  return [...found.filter((one) => one.sensible), ...found.filter((one) => !one.sensible)];
}

/** Ohms as a fitter says them: 3.1 Ω, 8.2 kΩ, 1.5 MΩ. */
export function sizeText(ohm: number): string {
  if (ohm < 9.995) return `${say(ohm, 2)} Ω`;
  if (ohm < 999.5) return `${say(ohm, 1)} Ω`;
  return ohm < 999_500 ? `${say(ohm / 1000, 1)} kΩ` : `${say(ohm / 1e6, 1)} MΩ`;
}
