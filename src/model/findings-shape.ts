import { causes } from './cause.js';
import type { Findings } from './findings.js';
import { allHaveShape, hasShape, isNamed, type Named, type PlainShape } from './plain-shape.js';

// What every reader of findings asks for; what is absent in findings of earlier versions is not asked for.
const findingsShape: PlainShape = { lists: ['sources', 'zones', 'problems', 'assumptions'] };
const windowShape: PlainShape = { times: ['start', 'end'] };
const zoneShape: PlainShape = {
  numbers: ['rank', 'downtimeMinutes'],
  numbersOrNull: ['offsetDegC', 'seriesOhm', 'shuntOhm', 'setpointDegC', 'roomDegC', 'wires'],
  texts: ['zone', 'machine'],
  words: { status: ['faulty', 'watch', 'healthy', 'insufficient-data'] },
  textsOrNull: ['onset', 'fixed', 'sensor', 'card', 'leavesTolerance', 'trend', 'nextCheck'],
  lists: ['symptoms', 'unable', 'checks', 'terms', 'repairs', 'soaks', 'duty', 'opensByDay'],
  numberTables: ['prior'],
};
const symptomShape: PlainShape = {
  texts: ['detector'],
  times: ['start', 'end'],
  numbers: ['count'],
  numberTables: ['facts'],
};
const termShape: PlainShape = { texts: ['term', 'says'], numbers: ['value'], numberTables: ['adds'] };
const unableShape: PlainShape = { texts: ['detector', 'why'] };
const repairShape: PlainShape = { times: ['time'], texts: ['from', 'done', 'found'] };
const checkShape: PlainShape = {
  texts: ['id', 'says', 'source'],
  words: {
    kind: ['caution', 'prepare', 'measure'],
    where: ['machine', 'sensor', 'cabinet', 'card', 'heater'],
    power: ['locked-out', 'live'],
  },
  lists: ['between', 'expected', 'outcomes'],
};
const downtimeShape: PlainShape = {
  numbers: ['stoppedMinutes', 'plannedMinutes', 'zoneFaultMinutes', 'otherMinutes', 'unknownMinutes'],
  numbersOrNull: ['cost'],
  textsOrNull: ['currency'],
  lists: ['from', 'byZone', 'byMachine', 'byWeek', 'pareto', 'reliability', 'notes'],
};
const downtimeRowShape: PlainShape = {
  texts: ['name', 'bucket'],
  textsOrNull: ['machine'],
  numbers: ['minutes', 'stops', 'longestMinutes'],
  numbersOrNull: ['cost'],
};
const reliabilityShape: PlainShape = {
  texts: ['name'],
  numbers: ['operatingHours', 'failures'],
  numbersOrNull: ['mtbfHours', 'mtbfLowHours', 'mtbfHighHours', 'mttrMinutes', 'availability'],
};
const alarmsShape: PlainShape = {
  lists: ['floods', 'chattering', 'fleeting', 'stale', 'mostFrequent', 'byZone', 'byMachine', 'byDay'],
};

/** Whether a value read from a file is findings of schema 1, whole enough to be shown. Never throws. */
export function isFindings(value: unknown): value is Findings {
  if (!hasShape(value, findingsShape) || value['schemaVersion'] !== 1) return false;
  const { window, zones, downtime, alarms, recordShares } = value;
  return (
    hasShape(window, windowShape) &&
    (zones as unknown[]).every(isZone) &&
    isDowntime(downtime) &&
    hasShape(alarms, alarmsShape) &&
    (recordShares === undefined || hasShape(recordShares, { lists: ['byCause'] }))
  );
}

function isZone(value: unknown): boolean {
  return (
    hasShape(value, zoneShape) &&
    isProbabilities(value['probabilities']) &&
    allHaveShape(value['symptoms'], symptomShape) &&
    allHaveShape(value['terms'], termShape) &&
    allHaveShape(value['unable'], unableShape) &&
    allHaveShape(value['repairs'], repairShape) &&
    allHaveShape(value['checks'], checkShape)
  );
}

function isProbabilities(value: unknown): boolean {
  const isShare = (share: unknown): boolean => typeof share === 'number' && share >= 0 && share <= 1;
  return isNamed(value) && causes.every((cause) => isShare(value[cause]));
}

function isDowntime(value: unknown): value is Named {
  if (!hasShape(value, downtimeShape)) return false;
  const rows = ['byZone', 'byMachine', 'byWeek', 'pareto'].map((name) => value[name]);
  return (
    rows.every((list) => allHaveShape(list, downtimeRowShape)) && allHaveShape(value['reliability'], reliabilityShape)
  );
}
