import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { survey } from '../../src/read/survey/survey.js';
import { pourFiles } from './poured.js';

const folder = mkdtempSync(join(tmpdir(), 'looselead-names-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Names of reading, set point and output of zone n, as exports of each language write them; common practice. */
const notations: readonly (readonly [string, string, (n: number) => readonly [string, string, string]])[] = [
  ['Italian', 'Data/Ora', (n) => [`Zona ${n} Temperatura`, `Zona ${n} Impostazione`, `Zona ${n} Uscita`]],
  [
    'Italian, words in front',
    'DataOra',
    (n) => [`T reale zona ${n}`, `T impostata zona ${n}`, `% riscaldamento zona ${n}`],
  ],
  ['Italian, valore letto', 'Data e ora', (n) => [`Zona ${n} Valore letto`, `Zona ${n} Set`, `Zona ${n} Potenza %`]],
  ['French', 'Date/Heure', (n) => [`Zone ${n} T° réelle`, `Zone ${n} T° consigne`, `Zone ${n} Taux de chauffe`]],
  ['Spanish', 'Fecha', (n) => [`Temperatura zona ${n}`, `Temperatura consigna zona ${n}`, `Salida % zona ${n}`]],
  ['Portuguese', 'Data/Hora', (n) => [`Zona ${n} Valor Atual`, `Zona ${n} Valor Desejado`, `Zona ${n} Saída`]],
  ['Polish', 'Data i czas', (n) => [`Strefa ${n} Temperatura`, `Strefa ${n} Wartość zadana`, `Strefa ${n} Wyjście`]],
  ['Polish, short', 'Czas', (n) => [`Strefa ${n} Wartość mierzona`, `Strefa ${n} Zadana`, `Strefa ${n} Moc grzania`]],
  [
    'Dutch',
    'Tijdstip',
    (n) => [`Zone ${n} Actuele temperatuur`, `Zone ${n} Gewenste temperatuur`, `Zone ${n} Uitsturing`],
  ],
  [
    'German',
    'Zeit',
    (n) => [`Heizzone ${n} Ist-Temperatur`, `Heizzone ${n} Soll-Temperatur`, `Heizzone ${n} Heizleistung`],
  ],
  ['Czech', 'Čas', (n) => [`Zóna ${n} Skutečná`, `Zóna ${n} Žádaná`, `Zóna ${n} Výkon`]],
  ['Turkish', 'Zaman', (n) => [`Bölge ${n} Gerçek`, `Bölge ${n} Ayar`, `Bölge ${n} Çıkış`]],
  ['Finnish', 'Aika', (n) => [`Vyöhyke ${n} Mittaus`, `Vyöhyke ${n} Asetus`, `Vyöhyke ${n} Ohjaus`]],
  ['Hungarian', 'Idő', (n) => [`Zóna ${n} Mért`, `Zóna ${n} Alapjel`, `Zóna ${n} Kimenet`]],
  ['Russian', 'Время', (n) => [`Зона ${n} Температура`, `Зона ${n} Уставка`, `Зона ${n} Мощность`]],
  ['numbers behind the role', 'Time', (n) => [`PV${n}`, `SV${n}`, `MV${n}`]],
  ['numbers parted from the role', 'Time', (n) => [`PV_${n}`, `SP_${n}`, `OP_${n}`]],
  ['numbered temperatures', 'Time', (n) => [`T${n}`, `SP${n}`, `OUT${n}`]],
  ['bare channels', 'Time', (n) => [`CH${n}`, `SP ${n}`, `OP ${n}`]],
  ['places in arrays', 'Time', (n) => [`Temp_Act[${n}]`, `Temp_Set[${n}]`, `Heat_Out[${n}]`]],
  ['roles in front', 'Time', (n) => [`PV Zone${n}`, `SP Zone${n}`, `OUT Zone${n}`]],
  ['roles in front of the bare name', 'Time', (n) => [`Zone ${n}`, `Set Zone ${n}`, `Power Zone ${n} %`]],
  ['joined words', 'Time', (n) => [`Zone${n}ActualTemp`, `Zone${n}SetTemp`, `Zone${n}HeatPct`]],
  ['letters of types', 'Time', (n) => [`HeatZone[${n}].rActual`, `HeatZone[${n}].rSet`, `HeatZone[${n}].rOut`]],
  ['structures', 'Time', (n) => [`stZone${n}.fActualTemp`, `stZone${n}.fSetpoint`, `stZone${n}.iOutPct`]],
  ['joined words in front', 'Time', (n) => [`rActTempZ${n}`, `rSetTempZ${n}`, `rOutputZ${n}`]],
  ['units behind an underscore', 'Time', (n) => [`zone_${n}_temp_c`, `zone_${n}_setpoint_c`, `zone_${n}_duty_pct`]],
  ['a reading in words of nobody', 'Time', (n) => [`Zone ${n} Lufimo`, `Zone ${n} SP`, `Zone ${n} OUT`]],
];

describe('reading, set point and output are told by name', () => {
  test.each(notations)('%s', async (language, time, names) => {
    const file = join(folder, `${language.replaceAll(/\W+/g, '-')}.csv`);
    const rows = Array.from({ length: 60 }, (_, i) => {
      const clock = `30.12.2025 08:${String(i).padStart(2, '0')}:00`;
      return [
        clock,
        ...[1, 2, 3].flatMap((n) => [`${140 + n + (i % 4)},${i % 10}`, `${140 + n},0`, `${30 + (i % 5)},5`]),
      ];
    });
    const header = [time, ...[1, 2, 3].flatMap(names)];
    writeFileSync(file, `${[header, ...rows].map((row) => row.join(';')).join('\n')}\n`);
    const { files, zones } = await survey([file]);
    expect(zones).toHaveLength(3);
    for (const [i, zone] of zones.entries()) {
      const mine = files[0]!.columns.filter((column) => column.zones.includes(zone.index));
      expect(mine.map(({ role }) => role)).toEqual(['reading', 'setpoint', 'output']);
      expect(mine.map(({ name }) => name)).toEqual(names(i + 1));
    }
  });
});

test('a running state with a letter of its type, and names that begin with such a letter', async () => {
  const file = join(folder, 'types.csv');
  const rows = Array.from({ length: 40 }, (_, i) => {
    const clock = `2025-12-30 08:${String(i).padStart(2, '0')}:00`;
    return `${clock},${150 + (i % 3)}.1,${160 + (i % 4)}.2,${i % 2},${40 + (i % 5)}`;
  });
  writeFileSync(file, `Time,FlowHead1 Temp,sensor2 Temp,xRun,rHumidity\n${rows.join('\n')}\n`);
  const { files, zones } = await survey([file]);
  expect(zones.map(({ name }) => name)).toEqual(['FlowHead1', 'sensor2']);
  expect(files[0]!.columns.map(({ role }) => role)).toEqual(['time', 'reading', 'reading', 'running', 'ignored']);
});

test.each([
  ['Time,PV,SP,CO', ['reading', 'setpoint', 'output']],
  ['Time,Temp,CO ppm', ['reading', 'ignored']],
])('CO is the controller output beside a set point, else it may be a gas: %s', async (header, roles) => {
  const file = join(folder, 'co.csv');
  const rows = Array.from(
    { length: 40 },
    (_, i) => `2025-12-30 08:${String(i).padStart(2, '0')}:00,${150 + (i % 3)}.1,160,${30 + (i % 4)}`,
  );
  const cells = header.split(',').length;
  writeFileSync(file, `${[header, ...rows].map((row) => row.split(',').slice(0, cells).join(',')).join('\n')}\n`);
  const { files } = await survey([file]);
  expect(files[0]!.columns.slice(1).map(({ role }) => role)).toEqual(roles);
});

test('numbered things are not roles where nothing leads', async () => {
  const file = join(folder, 'heaters.csv');
  const rows = Array.from(
    { length: 40 },
    (_, i) => `2025-12-30 08:${String(i).padStart(2, '0')}:00,${150 + (i % 3)}.1,${160 + (i % 4)}.2`,
  );
  writeFileSync(file, `Time,Heater 1,Heater 2\n${rows.join('\n')}\n`);
  const { zones } = await survey([file]);
  expect(zones.map(({ name }) => name)).toEqual(['Heater 1', 'Heater 2']);
});

describe('a noun before the word that says the role', () => {
  const cell = (name: string, i: number): string =>
    /OUT|%/.test(name) ? String(30 + (i % 5)) : /SP/.test(name) ? '180' : `${170 + (i % 3)}.${i % 7}`;

  test.each([
    [['Rear heater PV', 'Rear heater SP', 'Rear heater OUT'], 'Rear heater', ['reading', 'setpoint', 'output']],
    [['Rear heater Actual', 'Front heater Actual'], 'Rear heater', ['reading']],
    [['Kiln out PV', 'Kiln out SP', 'Kiln in PV', 'Kiln in SP'], 'Kiln out', ['reading', 'setpoint']],
    [['Kiln PV', 'Kiln SP', 'Kiln out PV', 'Kiln out SP'], 'Kiln out', ['reading', 'setpoint']],
    [['Zone 1 PV', 'Zone 1 SP', 'Zone 1 heater OUT'], 'Zone 1', ['reading', 'setpoint', 'output']],
    [['Zone 1 PV', 'Zone 1 SP', 'Zone 1 heat Actual'], 'Zone 1', ['reading', 'setpoint', 'output']],
    [['Zone 1 heater temperature', 'Zone 1 SP', 'Zone 1 OUT'], 'Zone 1', ['reading', 'setpoint', 'output']],
  ] as const)('%s', async (names, zone, roles) => {
    const file = join(folder, 'nouns.csv');
    const rows = Array.from({ length: 40 }, (_, i) =>
      [`2025-12-30 08:${String(i).padStart(2, '0')}:00`, ...names.map((name) => cell(name, i))].join(','),
    );
    writeFileSync(file, `Time,${names.join(',')}\n${rows.join('\n')}\n`);
    const { files, zones } = await survey([file]);
    const found = zones.find(({ name }) => name === zone);
    const mine = files[0]!.columns.filter((column) => found && column.zones.includes(found.index));
    expect(mine.map(({ role }) => role)).toEqual(roles);
  });
});

describe('one running state in a file of one machine is that of all its zones', () => {
  const columnsOf = async (running: readonly string[]) => {
    const rows = Array.from({ length: 60 }, (_, i) => {
      const time = new Date(Date.UTC(2026, 4, 4, 6, 0, 10 * i)).toISOString();
      return [time, 180 + (i % 7) / 10, 190 + (i % 5) / 10, ...running.map(() => Number(i > 30))].join(';');
    });
    const header = ['Time', 'DB_Heat.Zone[1].rAct', 'DB_Heat.Zone[2].rAct', ...running].join(';');
    const { found } = await pourFiles({ 'log.csv': `${[header, ...rows].join('\n')}\n` });
    return found.files[0]!.columns.slice(3).map(({ role, zones }) => [role, ...zones]);
  };

  test.each(['DB_Mach.xRun', 'GVL.bRun', 'DB_Cell4.xRun', 'Machine_Run'])('%s', async (name) => {
    expect(await columnsOf([name])).toEqual([['running', 0, 1]]);
  });
  test.each(['DB_Pump.xRun', 'Hopper running', 'Cooling fan run'])('not %s, a part of it', async (name) => {
    expect(await columnsOf([name])).toEqual([['ignored']]);
  });
  test('not one of several that no zone or machine is named by', async () => {
    expect(await columnsOf(['DB_A.xRun', 'DB_B.xRun'])).toEqual([['ignored'], ['ignored']]);
  });
});
