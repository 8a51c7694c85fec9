import { describe, expect, test } from 'vitest';
import { readingState } from '../../src/model/sample-block.js';
import { pourFiles } from './poured.js';

const rowCount = 400;
const heatRows = 100;
const zones = [1, 2, 3];
const setpointDegC = (zone: number) => 160 + 10 * zone;
const readingDegC = (zone: number, i: number) =>
  i < heatRows
    ? 22 + ((setpointDegC(zone) - 22) * i) / heatRows
    : setpointDegC(zone) + Math.round(10 * Math.sin(i / 7 + zone)) / 10;
const percent = (zone: number, i: number) => (i < heatRows ? 100 : 30 + zone + Math.round(5 * Math.cos(i / 7)));

function log(number: (degC: number) => number, output: (share: number) => number, names = zones): string {
  const header = names.flatMap((zone) => [`Zone ${zone} PV`, `Zone ${zone} SP`, `Zone ${zone} OUT`]);
  const rows = Array.from({ length: rowCount }, (_, i) => {
    const time = new Date(Date.UTC(2026, 2, 2, 6) + i * 10_000).toISOString();
    const cells = names.flatMap((zone) => [
      number(readingDegC(zone, i)),
      number(setpointDegC(zone)),
      Math.round(output(percent(zone, i) / 100)),
    ]);
    return [time, ...cells].join(',');
  });
  return [`Time,${header.join(',')}`, ...rows, ''].join('\n');
}

describe('temperatures as whole numbers of a data block', () => {
  test.each([
    ['tenths', 10],
    ['hundredths', 100],
  ])('%s of a degree', async (name, parts) => {
    const { found, zones: poured } = await pourFiles({
      'log.csv': log(
        (degC) => Math.round(degC * parts),
        (share) => 100 * share,
      ),
    });
    expect(found.files[0]!.notes.join()).toContain(`readings are ${name} of a degree`);
    poured.forEach((zone, k) => {
      zone.readingDegC.forEach((value, i) => expect(Math.abs(value - readingDegC(k + 1, i))).toBeLessThan(0.051));
      expect(zone.setpointDegC[200]).toBeCloseTo(setpointDegC(k + 1), 6);
    });
  });

  test('a code does not make hundredths of tenths', async () => {
    const text = log(
      (degC) => Math.round(degC * 10),
      (share) => 100 * share,
      [1],
    );
    const lines = text.split('\n').map((line, i) => (i > 200 && i < 230 ? line.replace(/,\d+/, ',9999') : line));
    const { zones: poured } = await pourFiles({ 'log.csv': lines.join('\n') });
    expect(poured[0]!.readingDegC[300]).toBeCloseTo(readingDegC(1, 300), 1);
    expect(poured[0]!.state[210]).toBe(readingState.aboveScale);
  });

  test('a hot zone in whole °F is not in tenths', async () => {
    const text = log(
      (degC) => Math.round((degC + 330) * 1.8 + 32),
      (share) => 100 * share,
    );
    const { zones: poured } = await pourFiles({ 'log.csv': text.replaceAll('PV', 'PV [°F]') });
    expect(poured[0]!.readingDegC[300]).toBeCloseTo(readingDegC(1, 300) + 330, 0);
  });
});

// Ends of 8, 10, 12 and 15 bits, and parts of a percent.
test.each([255, 1000, 1023, 4095, 10_000, 32_767])('outputs from 0 to %i, full while heating up', async (end) => {
  const { zones: poured } = await pourFiles({
    'log.csv': log(
      (degC) => degC,
      (share) => share * end,
    ),
  });
  poured.forEach((zone, k) =>
    zone.outputPercent.forEach((value, i) => expect(Math.abs(value - percent(k + 1, i))).toBeLessThan(0.21)),
  );
});

test('an output in watts, each zone with a heater of its own', async () => {
  const text = log(
    (degC) => degC,
    (share) => share * 1200,
    [1, 2],
  );
  const half = text
    .split('\n')
    .map((line, i) => (i === 0 ? line : line.replace(/\d+$/, (watts) => String(Number(watts) / 2))));
  const { found, zones: poured } = await pourFiles({ 'log.csv': half.join('\n').replaceAll('OUT', 'Power [W]') });
  expect(found.files[0]!.notes.join()).toContain('the largest of each column is taken as 100 %');
  poured.forEach((zone, k) =>
    zone.outputPercent.forEach((value, i) => expect(Math.abs(value - percent(k + 1, i))).toBeLessThan(0.11)),
  );
});
