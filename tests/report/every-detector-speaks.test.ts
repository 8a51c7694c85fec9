import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { judges } from '../../src/detect/index.js';
import { runJudges } from '../../src/detect/run-judges.js';
import type { SymptomNote } from '../../src/model/findings.js';
import { spoken, symptomText } from '../../src/report/sentences/symptom.js';
import { phraseText } from '../../src/report/text/phrase.js';
import { faultyPlant } from '../make/faulty-plant.js';

const detectFolder = new URL('../../src/detect/', import.meta.url);
const detectText = readdirSync(detectFolder, { recursive: true })
  .map(String)
  .filter((file) => file.endsWith('.ts'))
  .map((file) => readFileSync(new URL(file, detectFolder), 'utf8'))
  .join('\n');

function askedOf(detector: string, answer: number): ReadonlySet<string> {
  const asked = new Set<string>();
  const ask = (name: string): number => {
    asked.add(name);
    return answer;
  };
  const symptom: SymptomNote = { detector, start: '', end: '', count: 2, facts: {} };
  spoken.get(detector)!.say(ask, symptom);
  spoken.get(detector)!.weight(ask);
  return asked;
}

test.each(judges.map(({ meta }) => [meta.id] as const))('%s has a sentence of its own', (id) => {
  expect(spoken.has(id), `src/report/sentences has no sentence for ${id}`).toBe(true);
});

test('no sentence is kept for a detector that is gone', () => {
  const ids = new Set(judges.map(({ meta }) => meta.id));
  expect([...spoken.keys()].filter((id) => !ids.has(id))).toEqual([]);
});

test.each([...spoken.keys()].map((id) => [id] as const))('%s asks only for facts that detectors state', (id) => {
  const asked = new Set([...askedOf(id, 2), ...askedOf(id, NaN)]);
  expect(asked.size).toBeGreaterThan(0);
  const stale = [...asked].filter((name) => !new RegExp(`\\b${name}\\b`).test(detectText));
  expect(stale).toEqual([]);
});

test('what judges see on made zones is said with its numbers, and no fact as a bare name', () => {
  const { outcomes } = runJudges(faultyPlant(), judges);
  const symptoms = outcomes.flatMap(({ symptoms: seen }) => seen);
  expect(new Set(symptoms.map(({ detector }) => detector)).size).toBeGreaterThanOrEqual(10);
  for (const { detector, count, facts } of symptoms) {
    const { says, details } = symptomText({ detector, start: '', end: '', count, facts });
    const text = phraseText(says);
    expect(text, detector).toMatch(/\d|once|twice/);
    for (const part of [text, ...details.map((detail) => phraseText(detail))]) {
      expect(part, detector).not.toMatch(/–|NaN|undefined|Infinity|[a-z][A-Z]|\d{9}|-\d/);
    }
  }
});
