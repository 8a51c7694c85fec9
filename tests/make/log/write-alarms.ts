import { join } from 'node:path';
import type { Plant } from '../made-plant.js';
import type { MadeAlarm } from '../zone-alarms.js';
import type { AlarmFormat } from './log-format.js';
import { TextFile } from './text-file.js';
import { timeWriter } from './time-text.js';

interface NamedAlarm {
  readonly alarm: MadeAlarm;
  readonly source: string;
  readonly text: string;
  readonly priority: number;
}

interface Line {
  readonly atS: number;
  readonly cells: readonly string[];
}

/** Writes the alarm log, as events or as spans; nothing when the plant has none. */
export function writeAlarms(plant: Plant, folder: string): void {
  const { format, startMs } = plant.parameters;
  const { alarms } = format;
  if (alarms.layout === 'none') return;
  // Alarm logs keep one time column even where the temperature log splits it.
  const style =
    format.time === 'split-dots'
      ? 'dots-dmy'
      : format.time === 'split-us'
        ? 'slash-mdy-12h'
        : format.time === 'split-iso'
          ? 'iso'
          : format.time;
  const write = timeWriter(style, format.timezone, format.separator);
  const jump = format.clockJump;
  const stamp = (seconds: number): string => {
    const jumpS = jump && seconds >= jump.atS ? jump.byS : 0;
    return Number.isNaN(seconds) ? '' : write(startMs + (seconds + alarms.shiftS + jumpS) * 1000);
  };
  const endS = plant.parameters.days * 86400;
  const named = plant.alarms.filter((alarm) => isLogged(alarm, alarms)).map((alarm) => nameAlarm(plant, alarm));
  const lines = alarms.layout.startsWith('spans')
    ? spanLines(named, alarms, stamp)
    : eventLines(named, alarms, stamp, endS);
  const file = new TextFile(join(folder, alarms.fileName), { ...format, isGzipped: false });
  file.line(headers(alarms).join(format.separator));
  for (const { cells } of lines)
    file.line(cells.map((text) => (text.includes(format.separator) ? `"${text}"` : text)).join(format.separator));
  file.close();
}

function isLogged(alarm: MadeAlarm, { shortestS, logsDeviation }: AlarmFormat): boolean {
  if (alarm.endS - alarm.startS < shortestS) return false;
  return logsDeviation || alarm.kind === 'input' || alarm.kind === 'machine';
}

function nameAlarm(plant: Plant, alarm: MadeAlarm): NamedAlarm {
  const { alarms } = plant.parameters.format;
  const machine = plant.machines.length > 1 ? (plant.machines[alarm.machine]?.name ?? '') : alarms.machineWord;
  const source = alarm.zone >= 0 ? (plant.zones[alarm.zone]?.name ?? '') : machine;
  const message = alarm.kind === 'machine' ? (alarms.stopTexts[alarm.reason] ?? '') : alarms.texts[alarm.kind];
  const priority = alarm.kind === 'machine' ? 3 : alarm.kind === 'input' ? 1 : 2;
  const text =
    alarms.source === 'before'
      ? `${source}: ${message}`
      : alarms.source === 'after'
        ? `${message} - ${source}`
        : alarms.source === 'brackets'
          ? `${message} (${source})`
          : message;
  return { alarm, source, text, priority };
}

function headers({ headers: words, source, hasPriority, layout }: AlarmFormat): string[] {
  const [time = 'Time', sourceWord = 'Source', text = 'Message', state = 'State', end = 'End'] = words;
  const who = source === 'column' ? [sourceWord] : [];
  if (layout === 'spans') return [time, end, ...who, text];
  if (layout === 'spans-duration') return [time, 'Duration (s)', ...who, text];
  return [time, ...who, text, state, ...(hasPriority ? ['Priority'] : [])];
}

function spanLines(
  named: readonly NamedAlarm[],
  { layout, source: place }: AlarmFormat,
  stamp: (seconds: number) => string,
): Line[] {
  return named.map(({ alarm, source, text }) => {
    const second =
      layout === 'spans'
        ? stamp(alarm.endS)
        : Number.isNaN(alarm.endS)
          ? ''
          : String(Math.round(alarm.endS - alarm.startS));
    return { atS: alarm.startS, cells: [stamp(alarm.startS), second, ...(place === 'column' ? [source] : []), text] };
  });
}

function eventLines(
  named: readonly NamedAlarm[],
  format: AlarmFormat,
  stamp: (seconds: number) => string,
  endOfLogS: number,
): Line[] {
  const words = format.layout === 'on-off' ? { active: '1', acknowledged: '', cleared: '0' } : format.stateWords;
  const lines: Line[] = [];
  for (const { alarm, source, text, priority } of named) {
    const add = (atS: number, word: string): void => {
      if (word === '' || Number.isNaN(atS) || atS > endOfLogS) return;
      const who = format.source === 'column' ? [source] : [];
      lines.push({ atS, cells: [stamp(atS), ...who, text, word, ...(format.hasPriority ? [String(priority)] : [])] });
    };
    add(alarm.startS, words.active);
    if (format.hasAcknowledge) add(alarm.acknowledgedS, words.acknowledged);
    add(alarm.endS, words.cleared);
  }
  return lines.sort((a, b) => a.atS - b.atS);
}
