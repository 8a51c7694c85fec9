import { describe, expect } from 'vitest';
import { blocksIn, countBlocks, labels, meaning, type Label } from './labelled.js';
import { both, claims, onOpenData, symptomsOf } from './open.js';

/**
 * Fault benchmark of de Bruijn, Nguyen, Bucur, Tei, SENSORNETS 2016: two outdoor sensors, faults put in with a label per
 * row. What each label is was counted on the files (see `meaning`): their names say it only in part.
 */
const folder = 'santander-fault-benchmark';
const sensors = ['santander163', 'santander20'];

describe('labelled faults', () => {
  for (const sensor of sensors) {
    for (const kind of ['clean', 'raw']) {
      onOpenData(`${folder}/${sensor}_${kind}.txt`, 'nothing is seen but holes', async (path) => {
        const { findings } = await both(path);
        expect(claims(findings)).toEqual([]);
        expect([...new Set(findings.zones.flatMap((zone) => zone.symptoms.map(({ detector }) => detector)))]).toEqual([
          'frozen-record',
        ]);
        expect((await countBlocks(path)).strays).toBe(0);
      });
    }
    for (const label of Object.keys(labels) as Label[])
      onOpenData(`${folder}/${sensor}_${label}.txt`, `${meaning[label]}, and nothing beside it`, async (path) => {
        const counted = await countBlocks(path);
        expect(counted.strays).toBe(0);
        const { visible, foundVisible } = counted.byLabel.get(label)!;
        expect(foundVisible).toBe(visible);
      });
  }
});

describe('faults of all kinds in one file', () => {
  for (const sensor of sensors)
    onOpenData(`${folder}/${sensor}_mixed.txt`, 'jumps are found, and the sensor is claimed', async (path) => {
      const { byLabel, strays } = await countBlocks(path);
      expect(strays).toBe(0);
      for (const label of ['bias', 'drift', 'polydrift'] as const) {
        const count = byLabel.get(label);
        if (count) expect([label, count.foundVisible]).toEqual([label, count.visible]);
      }
      expect(claims((await both(path)).findings)).toHaveLength(1);
    });
});

describe('a bias that was put in as one constant value', () => {
  for (const sensor of sensors)
    onOpenData(`${folder}/${sensor}_bias.txt`, 'is told as a value jumped to and kept', async (path) => {
      const { findings } = await both(path);
      const [stuck] = symptomsOf(findings.zones[0]!, 'stuck-reading');
      const long = blocksIn(path).filter(
        ({ rows, jumpInDegC }) => rows >= longRows && Math.abs(jumpInDegC) >= leastJumpDegC,
      );
      expect(long.length).toBeGreaterThan(0);
      expect(stuck!.facts).toMatchObject({ stuckCount: long.length, jumpedToCount: long.length });
      expect(stuck!.start).toBe(new Date(long[0]!.startMs).toISOString());
    });
});

/** Some hours in a reading that else never rests; and the jump by which stuck-reading tells them from a rest. */
const longRows = 60;
const leastJumpDegC = 5;
