import { expect, test } from 'vitest';
import { lossTables } from '../../src/report/tables.js';
import { emptyFindings, plantFindings } from '../make/report/findings.js';

test('every lost minute of every machine and week is in exactly one column', async () => {
  const { byMachine, byWeek } = await lossTables(plantFindings());
  for (const row of [...byMachine, ...byWeek]) {
    expect(row.zoneFaultMinutes + row.otherMinutes + row.unknownMinutes).toBe(row.lostMinutes);
  }
  const { downtime } = plantFindings();
  const lost = downtime.zoneFaultMinutes + downtime.otherMinutes + downtime.unknownMinutes;
  expect(byMachine.reduce((sum, row) => sum + row.lostMinutes, 0)).toBe(lost);
  expect(byWeek.reduce((sum, row) => sum + row.lostMinutes, 0)).toBe(lost);
  expect(byMachine.map(({ name }) => name)).toEqual(['Tray sealer 1', 'Blister former', 'Tray sealer 2']);
  expect(byWeek.map(({ name }) => name)).toEqual(['2026-W06', '2026-W07']);
});

test('planned time is no loss, and no downtime gives no rows', async () => {
  const findings = plantFindings();
  const planned = {
    name: 'Line',
    bucket: 'planned',
    machine: 'Line',
    minutes: 600,
    stops: 1,
    longestMinutes: 600,
    cost: null,
  } as const;
  const tables = await lossTables({
    ...findings,
    downtime: { ...findings.downtime, byMachine: [planned], byWeek: [] },
  });
  expect(tables.byMachine).toEqual([]);
  expect(await lossTables(emptyFindings())).toEqual({ byMachine: [], byWeek: [] });
});
