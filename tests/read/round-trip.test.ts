import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 4, 20, 6);
const dialects = fc.record({
  separator: fc.constantFrom(',', ';', '\t', '|'),
  hasDecimalComma: fc.boolean(),
  isQuoted: fc.boolean(),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  hasMark: fc.boolean(),
  thousands: fc.constantFrom('', "'"),
});

test('what is written in any dialect is what is read', async () => {
  // Steps small enough that no reading looks like a code.
  const walk = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 30, maxLength: 80 });
  await fc.assert(
    fc.asyncProperty(dialects, walk, fc.constantFrom(1, 2), async (dialect, steps, digits) => {
      const { separator, lineEnd, isQuoted, hasMark } = dialect;
      const decimal = dialect.hasDecimalComma && (separator !== ',' || isQuoted) ? ',' : '.';
      let value = 1200;
      const written = steps.map((step) => (value += step) / 10);
      const cell = (number: number): string => {
        const text = number.toFixed(digits).replace('.', decimal);
        const grouped = number >= 1000 ? text.replace(/^(\d)(\d{3})/, `$1${dialect.thousands}$2`) : text;
        return isQuoted ? `"${grouped}"` : grouped;
      };
      const lines = written.map((number, i) =>
        [new Date(startMs + i * 5000).toISOString(), cell(number), cell(2 * number)].join(separator),
      );
      const text = [['Time', 'Z1 PV (°C)', 'Z2 PV (°C)'].join(separator), ...lines].join(lineEnd) + lineEnd;
      const { zones, result } = await pourFiles({ 'log.csv': (hasMark ? '\uFEFF' : '') + text });
      expect(result.sources[0]).toMatchObject({ rowsRead: steps.length, rowsRejected: 0 });
      zones[0]!.readingDegC.forEach((degC, i) => expect(degC).toBeCloseTo(written[i]!, 9));
      zones[1]!.readingDegC.forEach((degC, i) => expect(degC).toBeCloseTo(2 * written[i]!, 9));
      expect(zones[0]!.timeMs).toEqual(written.map((_, i) => startMs + i * 5000));
    }),
    { numRuns: 150 },
  );
});
