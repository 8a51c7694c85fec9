import fc from 'fast-check';
import { expect, test } from 'vitest';
import { topCause } from '../../src/weigh/verdict.js';
import type { Verdict } from '../../src/weigh/weigh-plant.js';
import { faultCauses, type FaultKind } from '../make/faults/fault.js';
import { plainFault, smallPlant } from '../make/small-plant.js';
import { optionalColumns, verdictsWithout } from './without-column.js';

const ZONES = 4;

/** A small plant: one zone with a fault of any kind, or none. */
const plants = fc.record({
  seed: fc.integer({ min: 1, max: 1000 }),
  kind: fc.constantFrom<FaultKind | null>(null, ...(Object.keys(faultCauses) as FaultKind[])),
  zone: fc.integer({ min: 0, max: ZONES - 1 }),
  onsetDays: fc.constantFrom(0.5, 1.5, 2.5),
});
const columnSets = fc.subarray([...optionalColumns], { minLength: 1 });

/**
 * How much a fault may gain as the likeliest cause by a column that is not there. It is not nothing: a column may hold
 * what speaks against a cause. That a fault is no longer seen, and the zone counts as sound like any other of which
 * nothing is known, is no certainty gained. Nor does this hold the true cause down: of 285 made zones with a fault of each
 * kind (26 November 2026), six gained more than 0.05 for it without the running column, and one for a wrong cause (a card's reference taken
 * for an element, 0.84 to 0.92). The most: a contact with jumps soon after starts and stops, which may be the product's
 * (0.36 to 0.94), and a flexing cable some of whose opens come while the machine stands, as the column says (0.62 to
 * 0.86). Columns that speak against a cause must be able to.
 */
const mostGain = 0.1;

const share = ({ probabilities }: Verdict): number => probabilities[topCause(probabilities)];
const isFlagged = ({ status }: Verdict): boolean => status === 'faulty' || status === 'watch';

test(
  'a log with fewer columns flags no further zone, makes no wrong cause surer, and no plant surer on the whole',
  { timeout: 900_000 },
  () => {
    let flagged = 0;
    let gained = 0; // certainty of what was flagged, summed over zones
    fc.assert(
      fc.property(plants, columnSets, ({ seed, kind, zone, onsetDays }, columns) => {
        const faults = kind === null ? [] : [plainFault(kind, zone, onsetDays)];
        const plant = smallPlant({ seed, zones: ZONES, days: 4, everyS: 60, faults });
        const whole = verdictsWithout(plant, []);
        const less = verdictsWithout(plant, columns);
        whole.forEach((verdict, i) => {
          if (isFlagged(verdict)) {
            flagged++;
            gained += share(less[i]!) - share(verdict);
          } else expect(isFlagged(less[i]!), `zone ${i}`).toBe(false);
          const cause = topCause(less[i]!.probabilities);
          const isTrue = kind !== null && i === zone && cause === faultCauses[kind];
          if (cause !== 'none' && !isTrue) expect(share(less[i]!) - share(verdict), `zone ${i}`).toBeLessThan(mostGain);
        });
      }),
      { numRuns: 40, seed: 17 },
    );
    expect(flagged).toBeGreaterThan(1); // there was something to find
    expect(gained / flagged).toBeLessThan(0); // one zone may gain, as above; all together do not
  },
);

test('a tag and an input that stand still get one verdict, less sure, where no output tells them apart', () => {
  const [tag, input] = (['tag_frozen', 'channel_frozen'] as const).map((kind) => {
    const plant = smallPlant({ seed: 3, zones: ZONES, days: 4, everyS: 60, faults: [plainFault(kind, 0, 1.5)] });
    return { whole: verdictsWithout(plant, [])[0]!, less: verdictsWithout(plant, ['output', 'setpoint'])[0]! };
  });
  expect(topCause(tag!.whole.probabilities)).toBe('recording');
  expect(topCause(input!.whole.probabilities)).toBe('input');
  expect(tag!.less.probabilities).toEqual(input!.less.probabilities);
  expect(tag!.less.probabilities.recording).toBeGreaterThan(input!.whole.probabilities.recording);
  expect(tag!.less.probabilities.input).toBeLessThan(input!.whole.probabilities.input);
});
