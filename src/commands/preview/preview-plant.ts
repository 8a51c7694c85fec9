import type { LogColumn, LogFile } from '../../model/log-file.js';
import type { Survey } from '../../read/survey/survey.js';

/** A plant.yaml with what the logs gave, and the keys that only a person knows as comments to fill in. */
export function plantText({ files, zones, timezone, plant }: Survey): string {
  const columnsOf = columnsByZone(files);
  const unit = files.flatMap((file) => [...file.columns, ...file.tags]).find((column) => column.unit)?.unit ?? 'degC';
  const lines = [
    '# What this plant has. Every key but the name of a zone may be left out.',
    `unit: ${unit}   # degC, degF or K, where the log does not say`,
    timezone ? `timezone: ${timezone}` : "# timezone: Europe/Oslo   # of the log's clock",
    ...(plant.dates ? [`dates: ${plant.dates}`] : []),
    'zones:',
    ...zones.flatMap((zone) => [
      `  - name: ${quoted(zone.name)}`,
      ...(zone.machine === 'Machine' ? [] : [`    machine: ${quoted(zone.machine)}`]),
      ...columnKeys(columnsOf.get(zone.index) ?? []),
      zone.sensor ? `    sensor: ${zone.sensor}` : '    # sensor: pt100   # pt100, pt1000, tc-k, tc-j …',
      zone.wires ? `    wires: ${zone.wires}` : '    # wires: 3        # 2, 3 or 4',
      zone.card ? `    card: ${quoted(zone.card)}` : '    # card: 1A        # zones on one input card share its faults',
      zone.heaterW ? `    heaterW: ${zone.heaterW}` : '    # heaterW: 400     # rated watts and volts of the heater',
      zone.heaterV ? `    heaterV: ${zone.heaterV}` : '    # heaterV: 230',
    ]),
  ];
  return `${lines.join('\n')}\n`;
}

/** Columns and tags of all files by the zones they serve, in the order of the files; found once for hundreds of files. */
export function columnsByZone(files: readonly LogFile[]): ReadonlyMap<number, readonly LogColumn[]> {
  const found = new Map<number, LogColumn[]>();
  for (const file of files)
    for (const column of [...file.columns, ...file.tags])
      for (const zone of column.zones) {
        const known = found.get(zone);
        if (known) known.push(column);
        else found.set(zone, [column]);
      }
  return found;
}

function columnKeys(columns: readonly LogColumn[]): string[] {
  return (['reading', 'setpoint', 'output'] as const).flatMap((role) => {
    const column = columns.find((it) => it.role === role);
    return column ? [`    ${role}: ${quoted(column.name)}`] : [];
  });
}

/** JSON strings are YAML strings. */
function quoted(text: string): string {
  return /^[A-Za-z][A-Za-z0-9 ]*$/.test(text) && !/^(yes|no|on|off|true|false|null|y|n)$/i.test(text)
    ? text
    : JSON.stringify(text);
}
