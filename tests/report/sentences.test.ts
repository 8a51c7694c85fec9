import { expect, test } from 'vitest';
import { heaterChecks } from '../../src/assemble/checks/heater-checks.js';
import type { SymptomNote } from '../../src/model/findings.js';
import { symptomText } from '../../src/report/sentences/symptom.js';
import { firstStep, sensorName, whatToBring } from '../../src/report/sentences/next-step.js';
import { numberedFaults } from '../../src/report/sentences/numbered.js';
import { summary } from '../../src/report/sentences/summary.js';
import { verdict } from '../../src/report/sentences/verdict.js';
import { expectedText } from '../../src/report/sentences/expected.js';
import { phraseText } from '../../src/report/text/phrase.js';
import { emptyFindings, plantFindings } from '../make/report/findings.js';

const plain = (text: string): string => text.replaceAll('\u00A0', ' ');

function note(detector: string, count: number, facts: Readonly<Record<string, number>>): SymptomNote {
  return { detector, start: '2026-02-10T00:00:00Z', end: '2026-02-11T00:00:00Z', count, facts };
}

const said = (symptom: SymptomNote): string => plain(phraseText(symptomText(symptom).says));

const sentences: readonly (readonly [SymptomNote, string])[] = [
  [
    note('sensor-opens', 22, { longestOpenMinutes: 1.5, standingMinutes: 0, alarmOnlyCount: 15 }),
    'the sensor circuit opens 22 times, the longest for 2 min; 15 of them only in the alarms',
  ],
  [
    note('sensor-opens', 1, { longestOpenMinutes: 300, standingMinutes: 300 }),
    'the sensor circuit opens once, for 5 h; it has stood so for 5 h when the log ends',
  ],
  [note('sensor-opens', 2, { shortCount: 2 }), 'the reading goes to the bottom of its scale twice'],
  [
    note('opens-by-running', 9, { runningCount: 9, runningHours: 130.4, stoppedCount: 0, stoppedHours: 71.8 }),
    'it opens 9 times in 130 h of running and not once in 72 h of standing',
  ],
  [
    note('opens-by-heat', 9, { hotCount: 8, hotHours: 52, coldCount: 1, coldHours: 4.5 }),
    'it opens 8 times in 52 h hot and once in 4 h 30 min cold',
  ],
  [
    note('opens-growth', 9, { firstCount: 2, firstHours: 51, lastCount: 7, lastHours: 49 }),
    'it opens twice in 51 h at first and 7 times in 49 h later',
  ],
  [
    note('code-value', 3, { valueDegC: 850, longestMinutes: 12, otherZonesCount: 1 }),
    'the log holds exactly 850.0 °C 3 times, a code and no temperature, the longest for 12 min; 1 other zone has it too',
  ],
  [
    note('spikes', 12, { largestSizeDegC: 41.5 }),
    'the reading jumps out and back 12 times, faster than heat can move it, by up to 41.5 °C',
  ],
  [
    note('returning-steps', 4, { medianStepDegC: 2.6, largestStepDegC: 5.2 }),
    'the reading takes 4 steps that no heat explains, mostly of 2.6 °C, the largest of 5.2 °C',
  ],
  [
    note('scatter-growth', 4, { firstNoiseDegC: 0.6, lastNoiseDegC: 2.4 }),
    'the reading scatters by 2.40 °C at the end, 0.60 °C at first',
  ],
  [
    note('stuck-reading', 1, { valueDegC: 181.2, longestMinutes: 90 }),
    'the reading stands still at 181.2 °C once while output or neighbours move, for 1 h 30 min',
  ],
  [
    note('frozen-record', 2, { gapMinutes: 30, fileFrozenMinutes: 0, tagFrozenMinutes: 0 }),
    'rows are missing for 30 min',
  ],
  [
    note('card-events', 3, { ownCount: 3, sharedCount: 3, zonesAtOnceCount: 4 }),
    'all its 3 losses of the reading come at the same moment as those of other zones, 4 zones at once',
  ],
  [
    note('repairs', 1, { faultMinutes: 600, listedCount: 0 }),
    'the fault ends as a repair would end it after 10 h of fault',
  ],
  [
    note('slow-drift', 1, { slopeDegCPerDay: -0.4, offsetDegC: -3.1 }),
    'the reading drifts, by 2.8 °C a week, and is 3.1 °C below the truth at the end; the loop hides it',
  ],
  [
    note('cold-soak-offset', 2, { offsetDegC: -3.1, uncertaintyDegC: 0.12, changeDegC: -2.5 }),
    'in the last cold soaks it reads 3.1 °C below its neighbours (± 0.12 °C), 2.5 °C less than at first',
  ],
  [
    note('wet-recovery', 1, { hotDepthDegC: -5.2, coldDepthDegC: -2.6, recoveryHours: 8 }),
    'it falls low at once, by 5.2 °C hot and 2.6 °C cold, and comes back over some 8 h, as wet terminals do',
  ],
  [
    note('heater-weak', 1, { dutyRatio: 1.792, fullOutputMinutes: 0, belowDegC: 0 }),
    'it needs 1.79 times the output it needed before: part of the heater may be gone',
  ],
  [
    note('opens-by-heat', 11, { hotCount: 0, hotHours: 0, coldCount: 11, coldHours: 47 }),
    'it opens 11 times in 47 h cold; it was not hot in that time',
  ],
  [
    note('scatter-growth', 4, { firstNoiseDegC: 0.35, lastNoiseDegC: 0.37, ownGrowthRatio: 1.06, peerNoiseRatio: 4.1 }),
    'the reading scatters by 0.37 °C, 4.1 times as much as its neighbours',
  ],
  [
    note('alarms-alone', 1, { lowCount: 1, lowMinutes: 205, highCount: 0, highMinutes: 0 }),
    'its low alarm stood once, for 3 h 25 min, while the other zones of the machine had none',
  ],
  [
    note('heater-dead', 2, { outputPercent: 100, belowDegC: 120, noHeatMinutes: 90 }),
    'the reading falls twice although the output is at 100 %, to 120 °C below the set point, for 1 h 30 min',
  ],
  [
    note('heater-dead', 1, { outputPercent: NaN, belowDegC: 120, noHeatMinutes: 90 }),
    'the reading falls once although the other zones of its machine are held hot, to 120 °C below the set point, for 1 h 30 min',
  ],
  [
    note('deviation-from-setpoint', 1, { deviationDegC: -8, deviationMinutes: 90, outputPercent: NaN }),
    'the reading stays 8.0 °C below its set point for 1 h 30 min',
  ],
  [
    note('reading-low-shorted', 2, { readingDegC: 24, lowMinutes: 90, fallRatio: 40 }),
    'faster than a body can cool, the reading drops twice to 24.0 °C, for 1 h 30 min',
  ],
  [
    note('reading-low-shorted', 1, { readingDegC: 24, lowMinutes: 90, fallRatio: NaN, backAtDegC: 212 }),
    'the reading lies at 24.0 °C, for 1 h 30 min while the zone is heated, and comes back at once to 212.0 °C',
  ],
];

test.each(sentences.map(([symptom, text]) => [symptom.detector, symptom, text] as const))(
  '%s in plain words',
  (_id, symptom, text) => {
    expect(said(symptom)).toBe(text);
  },
);

test('a healthy zone with a sign that makes no verdict is not said to have none', () => {
  const healthy = plantFindings().zones.find(({ status }) => status === 'healthy')!;
  expect(phraseText(verdict({ ...healthy, symptoms: [] }))).toBe('No sign of a fault.');
  const start = '2026-02-03T00:00:00.000Z';
  const symptom = {
    detector: 'offset-step',
    start,
    end: start,
    count: 1,
    facts: { offsetDegC: 1, uncertaintyDegC: 0.2 },
  };
  expect(phraseText(verdict({ ...healthy, symptoms: [symptom] }))).toMatch(
    /^No fault is likely\. What was seen: since one moment it reads 1\.0.°C too high/,
  );
});

test('a detector that nobody has met keeps its name and all its facts', () => {
  const { says, details } = symptomText(note('lid-rattle', 2, { lidGapMm: 3, swingDegC: 2, chancePValue: 0.0001 }));
  expect(phraseText(says)).toBe('lid rattle, seen twice');
  expect(details.map((detail) => plain(phraseText(detail)))).toEqual([
    'lid gap mm 3',
    'swing 2.0 °C',
    'chance of so many together < 0.001',
  ]);
});

test('a rate per degree is no temperature', () => {
  const { details } = symptomText(note('lid-rattle', 1, { percentPerDegC: 0.31 }));
  expect(details.map((detail) => plain(phraseText(detail)))).toEqual(['output 0.31 % a degree (°C)']);
});

test('a temperature becomes °F with the 32 of its scale, a difference or a limit without', () => {
  const facts = { readingDegC: 100, toleranceDegC: 1, beforeLongDegC: 100, lowestDegC: 0, roomErrorDegC: 1 };
  const { details } = symptomText(note('lid-rattle', 1, facts));
  expect(details.map((detail) => plain(phraseText(detail, 'degF')))).toEqual([
    'reading 212.0 °F',
    'tolerance 1.8 °F',
    'before long 212.0 °F',
    'lowest 32.0 °F',
    'room error 1.8 °F',
  ]);
});

test('the sentence above everything names who needs a fitter and counts the rest', () => {
  expect(plain(summary(plantFindings()))).toBe(
    '2 of 16 zones need a fitter: Front jaw on Tray sealer 1 (probably the wiring to the sensor) and Upper plate 3 on ' +
      'Blister former (probably the sensor itself). The others: 1 to keep an eye on, 12 healthy and 1 that could not be judged.',
  );
  expect(summary(emptyFindings())).toContain('No zone was found');
  const healthy = plantFindings().zones.filter(({ status }) => status === 'healthy');
  expect(plain(summary({ ...plantFindings(), zones: healthy }))).toBe('None of 12 zones needs a fitter: 12 healthy.');
});

test('two causes that the log cannot tell apart are both named', () => {
  const [zone] = plantFindings().zones;
  const open = { sensor: 0.5, wiring: 0.4, input: 0.05, heater: 0, recording: 0, none: 0.05 };
  expect(phraseText(verdict({ ...zone!, probabilities: open }))).toContain('does not settle which');
});

test('the first step and what to bring follow the likely causes', () => {
  const [wiring] = plantFindings().zones;
  expect(phraseText(firstStep(wiring!))).toContain('move cable');
  expect(whatToBring(wiring!).join('; ')).toMatch(/lock.*0\.1 Ω.*ferrules.*spare sensor \(Pt100, 3 wires\)/);
  const noNext = { ...wiring!, nextCheck: null };
  expect(phraseText(firstStep(noNext))).toContain('sensor’s own connector');
  const heater = { ...noNext, checks: heaterChecks({ ratedW: null, ratedV: null }) };
  expect(phraseText(firstStep(heater))).toMatch(/^Locked out: measure the ohms of the heater/);
  const live = heater.checks.filter(({ power }) => power === 'live');
  expect(phraseText(firstStep({ ...heater, checks: live }))).toMatch(/authorised people only/i);
  expect([sensorName('tc-k'), sensorName('pt1000')]).toEqual(['type K thermocouple', 'Pt1000']);
});

test('a zone that may overheat is told to be switched off before anything is measured, and so says the first sentence', () => {
  const [zone, ...others] = plantFindings().zones;
  const stuck = { ...zone!, uncheckedHeat: 'stuck-on' as const };
  expect(phraseText(firstStep(stuck))).toMatch(/^It may overheat.*lock it out before all else\. .*move cable/);
  expect(plain(summary({ ...plantFindings(), zones: [stuck, ...others] }))).toContain('may overheat');
  expect(phraseText(firstStep({ ...zone!, uncheckedHeat: 'reading-low' }))).toContain('far hotter than it reads');
  expect(phraseText(firstStep(zone!))).not.toContain('hotter');
});

test('faults are numbered in the order of time and only those with a place on the trace', () => {
  const [zone] = plantFindings().zones;
  const faults = numberedFaults(zone!);
  expect(faults.map(({ number }) => number)).toEqual([1, 2]);
  expect(faults.map(({ symptom }) => symptom.detector)).not.toContain('opens-by-running');
});

test('an expected value says its limits, and an unknown one says what to do', () => {
  const ohm = {
    quantity: 'resistance',
    condition: 'room',
    atDegC: 0,
    toleranceOhm: null,
    toleranceDegC: null,
    ohmPerDegC: null,
    cableOhm: null,
  } as const;
  const text = (low: number | null, expected: number | null, high: number | null): string =>
    plain(phraseText(expectedText({ ...ohm, lowOhm: low, expectedOhm: expected, highOhm: high })));
  expect(text(99.9, 100, 100.1)).toBe('100.0 Ω (99.9 to 100.1)');
  expect(text(0, null, 2)).toBe('less than 2.0 Ω');
  expect(text(0, null, null)).toBe('note it down');
});
