import { expect, test } from 'vitest';
import { faultMarks } from '../../src/assemble/marks.js';
import { spikes } from '../../src/detect/judges/spikes.js';
import { returningSteps } from '../../src/detect/judges/returning-steps.js';
import type { Evidence, Judge } from '../../src/model/detector.js';
import { ask } from '../make/ask.js';
import type { MadeSample } from '../make/blocks.js';
import { evidenceOf, zoneLog } from '../make/zone-log.js';

const minute = (s: MadeSample): number => s.timeMs / 60_000;
const spiked = (s: MadeSample) => (minute(s) % 211 === 0 && s.degC > 170 ? { ...s, degC: s.degC - 90 } : s);
/** A contact that adds 4 °C for half an hour, every two hours. */
const stepped = (s: MadeSample) => (minute(s) % 120 < 30 && s.degC > 170 ? { ...s, degC: s.degC + 4 } : s);

function marksOf(evidence: Evidence, judge: Judge) {
  const { symptoms } = ask(judge, evidence);
  const signs = new Set(symptoms.map(({ detector }) => detector));
  return { symptoms, marks: faultMarks(evidence, evidence.zones[0]!, signs) };
}

test('jumps and steps of which a sign was made are marked, as many as the sign counts', () => {
  for (const [judge, recorded, kind] of [
    [spikes, spiked, 'spike'],
    [returningSteps, stepped, 'settled-step'],
  ] as const) {
    const { symptoms, marks } = marksOf(evidenceOf([zoneLog({ recorded }), zoneLog({ seed: 2 })]), judge as Judge);
    expect(symptoms[0]!.count).toBeGreaterThan(2);
    expect(marks.map((mark) => mark.kind)).toEqual(Array(symptoms[0]!.count).fill(kind));
  }
});

test('those of several zones at once are not: no sign is made of them', () => {
  for (const [judge, recorded] of [
    [spikes, spiked],
    [returningSteps, stepped],
  ] as const) {
    const both = evidenceOf([zoneLog({ recorded }), zoneLog({ seed: 2, recorded })]);
    expect(both.episodes.get(judge === spikes ? 'spike' : 'settled-step')![0]!.length).toBeGreaterThan(2);
    expect(marksOf(both, judge as Judge)).toEqual({ symptoms: [], marks: [] });
  }
});
