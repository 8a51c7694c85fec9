// Learns the strengths of all terms from plants made by the project's simulator, cross-validated by plant.
import { writeFileSync } from 'node:fs';
import { Command } from 'commander';
import { causes } from '../../src/model/cause.js';
import { aNumber } from '../make/a-number.js';
import { brierOfClasses } from './scores.js';
import { terms } from '../../src/weigh/terms/index.js';
import { weighZone } from '../../src/weigh/weigh-zone.js';
import type { Strengths } from '../../src/weigh/strengths.js';
import { fitStrengths, type Example } from './multinomial.js';
import { knownZones, type KnownZone } from './outcomes.js';
import { isHidden, type PlantTruth, type ZoneTruth } from './truth.js';

interface Options {
  readonly plants: string;
  readonly keep?: string;
  readonly write?: boolean;
  readonly folds: number;
}

const options = new Command('fit')
  .description('learns the strengths of all terms from made plants, cross-validated by plant')
  .requiredOption('--plants <folder>', 'where the made plants are')
  .option('--keep <folder>', 'where what the detectors said is kept for the next time')
  .option('--write', 'write the strengths to src/weigh/strengths.json')
  .option('--folds <count>', 'parts of the cross-validation', aNumber, 5)
  .parse()
  .opts<Options>();

/** Ridges tried; the one with the least cross-validated log loss is taken. */
const ridges = [3e-5, 1e-4, 3e-4, 1e-3];
const STEPS = 600;

/**
 * How often a fault is met beside how often it is drawn; 1 where absent. A card's reference seldom drifts (common
 * practice); it is drawn as often as the others so that its judge has something to see.
 */
const commonness: Readonly<Record<string, number>> = { card_reference: 0.2 };

const known = (await knownZones(options.plants, options.keep ?? `${options.plants}-outcomes`)).filter(isUsable);
const evidence = known.map((zone) => zone.evidence);
const examples: Example[] = known.map(({ truth }, i) => ({
  values: terms.map((term) => term.value(evidence[i]!) ?? 0),
  cause: truth.cause,
  weight: commonness[truth.fault] ?? 1,
}));
const plants = [...new Set(known.map(({ plant }) => plant.name))];
const foldOf = known.map(({ plant }) => plants.indexOf(plant.name) % options.folds);

const tried = ridges.map((ridge) => ({ ridge, ...crossValidate(ridge) }));
console.table(tried);
const best = tried.reduce((a, b) => (b.logLoss < a.logLoss ? b : a));
const strengths = fitStrengths(examples, terms, { ridge: best.ridge, steps: STEPS });
const table = {
  about:
    'Log-odds by cause before any evidence, and what each term adds at full value. Made by the command below; every number can be overridden in plant.yaml.',
  date: new Date().toISOString().slice(0, 10),
  command: 'npm run fit -- --plants DIR --write   (DIR made by tests/make/write-plants.ts)',
  plants: plants.length,
  zones: examples.length,
  faulty: examples.filter(({ cause }) => cause !== 'none').length,
  crossValidated: { folds: options.folds, ...best },
  ...strengths,
};
if (options.write) {
  writeFileSync(new URL('../../src/weigh/strengths.json', import.meta.url), `${JSON.stringify(table, null, 2)}\n`);
}
for (const [term, adds] of Object.entries(strengths.terms)) {
  const share = examples.filter((e) => e.values[terms.findIndex(({ id }) => id === term)]! > 0).length;
  console.log(term.padEnd(32), String(share).padStart(5), JSON.stringify(adds));
}
console.log('prior', JSON.stringify(strengths.prior));

/** Faults that left no trace teach nothing, nor do zones in which nothing can show. */
function isUsable({ truth, plant }: KnownZone): boolean {
  const isTraceless = truth.cause === 'none' && truth.drawn !== 'none';
  return !isTraceless && !isHidden(truth, plant.meta) && !isHiddenByStandby(truth, plant);
}

/** A machine on standby is never cold: with readings only, the loop hides the same faults as on one that never stops. */
function isHiddenByStandby(truth: ZoneTruth, { meta }: PlantTruth): boolean {
  return meta.rest === 'standby' && isHidden(truth, { ...meta, pattern: '24x7' });
}

function crossValidate(ridge: number): { logLoss: number; brier: number; rightCause: number } {
  let logLoss = 0;
  let brier = 0;
  let right = 0;
  let faulty = 0;
  for (let fold = 0; fold < options.folds; fold++) {
    const learnt = fitStrengths(
      examples.filter((_, i) => foldOf[i] !== fold),
      terms,
      { ridge, steps: STEPS },
    );
    for (const [i, example] of examples.entries()) {
      if (foldOf[i] !== fold) continue;
      const shares = sharesBy(learnt, i);
      const truth = causes.indexOf(example.cause);
      logLoss -= Math.log(Math.max(1e-4, shares[truth]!));
      brier += brierOfClasses(shares, truth);
      if (example.cause === 'none') continue;
      faulty++;
      if (shares.indexOf(Math.max(...shares)) === truth) right++;
    }
  }
  const round = (x: number): number => Math.round(x * 1e4) / 1e4;
  return {
    logLoss: round(logLoss / examples.length),
    brier: round(brier / examples.length),
    rightCause: round(right / faulty),
  };
}

function sharesBy(learnt: Strengths, i: number): number[] {
  const { probabilities } = weighZone(evidence[i]!, terms, learnt);
  return causes.map((cause) => probabilities[cause]);
}
