import type { AlarmFormat, LogFormat, TagNames, TimeStyle } from '../log/log-format.js';
import type { Random } from '../random.js';
import {
  alarmTexts,
  highCodes,
  localAlarmTexts,
  localTimeHeaders,
  lowCodes,
  qualityWords,
  runNames,
  runWords,
  stopTexts,
  tagSets,
  textCodes,
  timeHeaders,
} from './words.js';

/** Draws how a plant's logs look. Language, unit, decimal sign and dates go together as they do in life. */
export function drawFormat(random: Random, has: LogFormat['has'], unit: 'C' | 'F'): LogFormat {
  const { language, ...tags } = random.pick(unit === 'F' ? tagSets.filter((set) => set.language === 'en') : tagSets);
  const layout = random.weighted<LogFormat['layout']>({
    wide: 38,
    long: 26,
    'wide-daily': 10,
    'long-daily': 6,
    'file-per-zone': 10,
    'file-per-machine': 10,
  });
  const separator = pickSeparator(random, language);
  const decimal = language !== 'en' && separator !== ',' && random.chance(0.8) ? ',' : '.';
  const time = pickTime(random, language, unit);
  const tenthsAsIntegers = random.chance(0.05);
  const runStyle = random.weighted<LogFormat['runStyle']>({ none: 4, flag: 3, word: 2, speed: 1.5 });
  const isLong = layout.startsWith('long');
  const isChangeOfValue = isLong && random.chance(0.5);
  const quality = random.chance(isLong ? 0.5 : 0.06) ? 'column' : 'none';
  const timezone = random.chance(time === 'iso-t-offset' ? 1 : 0.12)
    ? random.pick(['Europe/Oslo', 'America/Chicago', 'Asia/Singapore', 'Europe/London'])
    : null;
  const styleName = runStyle === 'none' ? 'flag' : runStyle;
  return {
    dialect: `${layout}${isChangeOfValue ? '-cov' : ''} ${time}`,
    layout,
    isChangeOfValue,
    deadband: random.pick([0.05, 0.2, 0.5, 1]),
    heartbeatS: random.pick([300, 600, 900, 3600]),
    fileName: random.pick(['temperatures.csv', 'trend.csv', 'zones.csv', 'export.csv', 'history.txt', 'log.csv']),
    separator,
    decimal,
    time,
    timeHeader: random.chance(0.7)
      ? (localTimeHeaders[language] ?? random.pick(timeHeaders))
      : random.pick(timeHeaders),
    timezone,
    unit,
    digits: random.pick([0, 1, 1, 1, 2, 2] as const),
    outputDigits: random.pick([0, 0, 1] as const),
    tenthsAsIntegers,
    tags: { ...tags, unitStyle: pickUnitStyle(random, unit) },
    isZoneInFileNameOnly: random.chance(0.4),
    preamble: drawPreamble(random, separator),
    hasUnitRow: !isLong && random.chance(0.1),
    quality,
    qualityWords: random.pick(qualityWords),
    badValue: quality === 'column' ? random.pick(['code', 'code', 'last', 'blank'] as const) : 'code',
    runStyle,
    runName: random.pick(runNames[styleName]),
    runWords: random.pick(runWords),
    fullSpeed: random.pick([12, 30, 60, 120, 200]),
    has,
    codes: drawCodes(random, unit, tenthsAsIntegers),
    offSetpoint: random.pick(['zero', 'kept'] as const),
    emptyWord: random.pick(['', '', 'NaN', '-', 'null']),
    lineEnd: random.chance(0.3) ? '\r\n' : '\n',
    encoding: random.weighted<LogFormat['encoding']>({ utf8: 80, 'utf8-bom': 12, latin1: 5, utf16le: 3 }),
    isQuoted: random.chance(0.08),
    repeatsAtJoins: random.chance(0.4),
    isGzipped: random.chance(0.05),
    clockJump: null,
    hasPlantFile: timezone !== null || random.chance(0.4),
    hasMaintenance: random.chance(0.15),
    alarms: drawAlarmFormat(random, language),
  };
}

function pickSeparator(random: Random, language: string): LogFormat['separator'] {
  if (language === 'en') return random.weighted<LogFormat['separator']>({ ',': 60, ';': 15, '\t': 22, '|': 3 });
  return random.weighted<LogFormat['separator']>({ ';': 75, '\t': 20, ',': 5 });
}

function pickTime(random: Random, language: string, unit: 'C' | 'F'): TimeStyle {
  if (unit === 'F')
    return random.weighted<TimeStyle>({
      'slash-mdy-12h': 40,
      iso: 15,
      'iso-t-z': 10,
      'epoch-ms': 8,
      'epoch-s': 5,
      'split-us': 12,
      'iso-t-offset': 5,
      'month-name': 5,
    });
  if (language !== 'en')
    return random.weighted<TimeStyle>({
      'dots-dmy': 40,
      iso: 15,
      'slash-dmy': 10,
      'split-dots': 10,
      'dots-dmy-short': 5,
      'iso-t': 10,
      'epoch-ms': 5,
    });
  return random.weighted<TimeStyle>({
    iso: 22,
    'iso-t': 8,
    'iso-t-z': 14,
    'iso-t-offset': 6,
    'iso-ms': 5,
    'slash-ymd': 6,
    'slash-dmy': 6,
    'dots-dmy': 6,
    'month-name': 5,
    compact: 3,
    'epoch-s': 6,
    'epoch-ms': 10,
    'split-iso': 6,
  });
}

/** A log that says its unit nowhere is a log in °C here; °F logs mostly say so. */
function pickUnitStyle(random: Random, unit: 'C' | 'F'): TagNames['unitStyle'] {
  return unit === 'F'
    ? random.pick(['round', 'square', ''] as const)
    : random.pick(['', '', 'round', 'square'] as const);
}

function drawPreamble(random: Random, separator: string): string[] {
  if (random.chance(0.75)) return [];
  return random.pick([
    ['Trend export', 'Plant: Packing hall', ''],
    [`Report${separator}Temperature history`, `Created${separator}by operator`],
    ['# heater zones', '# one line per sample'],
    ['Data log', ''],
  ]);
}

function drawCodes(random: Random, unit: 'C' | 'F', tenthsAsIntegers: boolean): LogFormat['codes'] {
  if (tenthsAsIntegers) return { high: 3276.7, low: -3276.8, text: null };
  return {
    high: random.pick(highCodes[unit]),
    low: random.pick(lowCodes[unit]),
    text: random.chance(0.2) ? random.pick(textCodes) : null,
  };
}

function drawAlarmFormat(random: Random, language: string): AlarmFormat {
  const layout = random.weighted<AlarmFormat['layout']>({
    events: 40,
    spans: 34,
    'spans-duration': 6,
    'on-off': 10,
    none: 10,
  });
  return {
    layout,
    fileName: random.pick(['alarms.csv', 'alarms.csv', 'alarm-log.csv', 'events.csv']),
    texts: random.chance(0.8) ? (localAlarmTexts[language] ?? random.pick(alarmTexts)) : random.pick(alarmTexts),
    stopTexts: random.pick(stopTexts),
    source:
      layout === 'events'
        ? random.pick(['column', 'column', 'before', 'brackets'] as const)
        : random.pick(['before', 'before', 'column', 'after'] as const),
    headers: random.pick([
      ['Time', 'Source', 'Message', 'State', 'End'],
      ['Start', 'Zone', 'Alarm', 'State', 'End'],
      ['Timestamp', 'Tag', 'Description', 'Event', 'Cleared at'],
      ['Date/Time', 'Object', 'Text', 'Status', 'Off time'],
    ]),
    stateWords: random.pick([
      { active: 'Active', acknowledged: 'Acknowledged', cleared: 'Cleared' },
      { active: 'ALM', acknowledged: 'ACK', cleared: 'RTN' },
      { active: 'Raised', acknowledged: 'Accepted', cleared: 'Returned' },
      { active: 'ON', acknowledged: 'ACK', cleared: 'OFF' },
      { active: 'Came', acknowledged: 'Acknowledged', cleared: 'Gone' },
    ]),
    hasAcknowledge: random.chance(0.6),
    hasPriority: random.chance(0.5),
    shortestS: random.pick([0, 0, 0, 1, 3]),
    shiftS: random.chance(0.75)
      ? 0
      : random.pick([random.int(-90, 90), random.sign() * random.int(90, 900), 3600, -3600]),
    logsDeviation: random.chance(0.85),
    machineWord: random.pick(['Machine', 'Line', 'Main panel']),
  };
}
