import type { Findings } from './findings.js';

type Named = Readonly<Record<string, unknown>>;

/** Lists that every reader of findings walks over. */
const zoneLists = ['symptoms', 'unable', 'checks', 'terms', 'repairs', 'soaks', 'duty', 'opensByDay'];
const downtimeLists = ['from', 'byZone', 'byMachine', 'byWeek', 'pareto', 'reliability', 'notes'];
const alarmLists = ['floods', 'chattering', 'fleeting', 'stale', 'mostFrequent', 'byZone', 'byMachine', 'byDay'];

/** Whether a value read from a file is findings of schema 1, whole enough to be shown. Never throws. */
export function isFindings(value: unknown): value is Findings {
  if (!isNamed(value) || value['schemaVersion'] !== 1) return false;
  const { window, zones, downtime, alarms } = value;
  return (
    isNamed(window) &&
    isTime(window['start']) &&
    isTime(window['end']) &&
    hasLists(value, ['sources', 'zones', 'problems', 'assumptions']) &&
    (zones as unknown[]).every(isZone) &&
    isNamed(downtime) &&
    hasLists(downtime, downtimeLists) &&
    isNamed(alarms) &&
    hasLists(alarms, alarmLists)
  );
}

function isZone(value: unknown): boolean {
  if (!isNamed(value) || typeof value['zone'] !== 'string' || typeof value['machine'] !== 'string') return false;
  return isNamed(value['probabilities']) && typeof value['status'] === 'string' && hasLists(value, zoneLists);
}

/** Each name holds a list, and what the lists hold are no empty places. */
function hasLists(value: Named, names: readonly string[]): boolean {
  return names.every((name) => {
    const list = value[name];
    return Array.isArray(list) && list.every((item) => item !== null && item !== undefined);
  });
}

function isNamed(value: unknown): value is Named {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isTime(value: unknown): boolean {
  return typeof value === 'string' && !Number.isNaN(Date.parse(value));
}
