import fc from 'fast-check';
import { expect, test } from 'vitest';
import { EarliestFirst } from '../../src/intake/earliest-first.js';

test('many rows of times come out as a stable sort has them, whatever their lengths', () => {
  const rising = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 1 }).map((ms) => ms.sort((a, b) => a - b));
  fc.assert(
    fc.property(fc.array(rising), (rows) => {
      const queues = new EarliestFirst<{ place: number; atMs: number; at: number }>();
      for (const [place, times] of rows.entries()) queues.add({ place, atMs: times[0]!, at: 0 });
      const taken: [number, number][] = [];
      for (let queue = queues.first; queue; queue = queues.first) {
        taken.push([queue.atMs, queue.place]);
        const next = rows[queue.place]![++queue.at];
        if (next === undefined) {
          queues.removeFirst();
          continue;
        }
        queue.atMs = next;
        queues.settleFirst();
      }
      const all = rows.flatMap((times, place) => times.map((ms): [number, number] => [ms, place]));
      expect(taken).toEqual(all.sort(([a, i], [b, j]) => a - b || i - j));
    }),
  );
});
