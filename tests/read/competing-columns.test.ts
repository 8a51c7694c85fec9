import { describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const rowCount = 60;
const text = (header: string, cells: (i: number) => readonly (string | number)[]): string =>
  [
    header,
    ...Array.from({ length: rowCount }, (_, i) =>
      [new Date(Date.UTC(2026, 2, 2, 6) + i * 60_000).toISOString().slice(0, 19), ...cells(i)].join(';'),
    ),
  ].join('\n') + '\n';
const degC = (i: number): number => 180 + (i % 7) / 10;

describe('several columns of one zone', () => {
  test.each([
    ['Zone 1 Min;Zone 1 Max;Zone 1 Avg'],
    ['Z1 PV min;Z1 PV max;Z1 PV avg'],
    ['Zone 1 Minimum;Zone 1 Maximum;Zone 1 Mittelwert'],
  ])('of the smallest, the largest and the mean the mean is read: %s', async (names) => {
    const log = text(`Time;${names}`, (i) => [degC(i) - 2, degC(i) + 2, degC(i)]);
    const { zones } = await pourFiles({ 'log.csv': log });
    expect(zones.map(({ readingDegC }) => readingDegC[0])).toEqual([180]);
  });

  test('of the mean and the last value the last is read, which shows what came and went', async () => {
    const log = text('Time;Z1 Avg;Z1 Last;Z1 Min;Z1 Max;Z2 Last', (i) => [degC(i) - 1, degC(i), 170, 190, degC(i)]);
    const { found, zones } = await pourFiles({ 'log.csv': log });
    expect(zones.map(({ name, readingDegC }) => [name, readingDegC[0]])).toEqual([
      ['Z1', 180],
      ['Z2 Last', 180],
    ]);
    expect(found.files[0]!.columns.find(({ name }) => name === 'Z1 Avg')!.why).toContain('whose last value is read');
  });

  test.each([
    ['Z1 PV;Z1 Local SP;Z1 Remote SP;Z1 Active SP', 'Z1 Active SP'],
    ['Z1 PV;Z1 SP Local;Z1 SP Remote;Z1 SP Active', 'Z1 SP Active'],
    ['Z1.PV;Z1.LSP;Z1.RSP;Z1.WSP', 'Z1.WSP'],
    ['Z1 PV;Z1 SP1;Z1 SP;Z1 Set temp', 'Z1 SP'],
  ])('of several set points the one in force is read: %s', async (names, inForce) => {
    const log = text(`Time;${names}`, (i) => [degC(i), 120, 180, 180]);
    const { found, zones } = await pourFiles({ 'log.csv': log });
    expect(zones.map(({ name, setpointDegC }) => [name, setpointDegC[0]])).toEqual([['Z1', 180]]);
    expect(found.files[0]!.columns.find(({ role }) => role === 'setpoint')!.name).toBe(inForce);
  });

  test('the left and the right zone keep their own set points', async () => {
    const log = text('Time;Jaw L PV;Jaw L SP;Jaw R PV;Jaw R SP', (i) => [degC(i), 180, degC(i) + 20, 200]);
    const { zones } = await pourFiles({ 'log.csv': log });
    expect(zones.map(({ setpointDegC }) => setpointDegC[0])).toEqual([180, 200]);
  });
});

describe('what is no percent', () => {
  test('an output as a current of 4 to 20 mA, wide and long', async () => {
    const wide = text('Time;Z1 PV;Z1 SP;Z1 OUT mA', (i) => [degC(i), 180, i % 2 === 0 ? 4 : 12]);
    const long = text('Time;Tag;Value', () => []).split('\n')[0]!;
    const rows = wide
      .split('\n')
      .slice(1, -1)
      .flatMap((row) => {
        const [time, reading, setpoint, output] = row.split(';');
        return [`${time};Z1 PV;${reading}`, `${time};Z1 SP;${setpoint}`, `${time};Z1 OUT mA;${output}`];
      });
    for (const log of [wide, `${long}\n${rows.join('\n')}\n`]) {
      const { zones } = await pourFiles({ 'log.csv': log });
      expect(zones[0]!.outputPercent.slice(0, 2)).toEqual([0, 50]);
    }
  });

  test.each(['Packs/min', 'Output pcs/min', 'Takte/min'])('a rate of the machine: %s', async (name) => {
    const { zones } = await pourFiles({
      'log.csv': text(`Time;Z1 PV;Z1 SP;${name}`, (i) => [degC(i), 180, i < 30 ? 0 : 42]),
    });
    expect([zones[0]!.running[0], zones[0]!.running.at(-1)]).toEqual([0, 1]);
  });

  test('bits of an alarm word are no temperatures', async () => {
    const { zones } = await pourFiles({ 'log.csv': text('Time;AlarmWord1;FaultBits', (i) => [i % 5, i % 3]) });
    expect(zones).toEqual([]);
  });
});
