import type { AlarmTexts, TagNames } from '../log/log-format.js';

/** Zone names of one kind of machine, and the kind of body behind them. Invented; words of the trade (common practice). */
export interface ZoneFamily {
  readonly names: readonly string[];
  readonly body: 'bar' | 'platen' | 'barrel' | 'nozzle';
}

export const zoneFamilies: readonly ZoneFamily[] = [
  {
    names: ['Zone 1', 'Zone 2', 'Zone 3', 'Zone 4', 'Zone 5', 'Zone 6', 'Zone 7', 'Zone 8', 'Zone 9', 'Zone 10'],
    body: 'bar',
  },
  { names: ['Z1', 'Z2', 'Z3', 'Z4', 'Z5', 'Z6', 'Z7', 'Z8'], body: 'barrel' },
  { names: ['HZ01', 'HZ02', 'HZ03', 'HZ04', 'HZ05', 'HZ06', 'HZ07', 'HZ08', 'HZ09', 'HZ10'], body: 'nozzle' },
  { names: ['TIC201', 'TIC202', 'TIC203', 'TIC204', 'TIC205', 'TIC206', 'TIC207', 'TIC208'], body: 'platen' },
  { names: ['TC-11', 'TC-12', 'TC-13', 'TC-14', 'TC-15', 'TC-16'], body: 'barrel' },
  { names: ['Front jaw', 'Rear jaw', 'Fin seal', 'Cross seal upper', 'Cross seal lower', 'Tear bar'], body: 'bar' },
  { names: ['SealTop_1', 'SealTop_2', 'SealTop_3', 'SealBottom_1', 'SealBottom_2', 'SealBottom_3'], body: 'bar' },
  {
    names: ['Upper platen L', 'Upper platen M', 'Upper platen R', 'Lower platen L', 'Lower platen M', 'Lower platen R'],
    body: 'platen',
  },
  {
    names: [
      'Feed zone',
      'Compression zone',
      'Metering zone',
      'Flange',
      'Adaptor',
      'Die body',
      'Die lip left',
      'Die lip right',
    ],
    body: 'barrel',
  },
  {
    names: [
      'Nozzle 1',
      'Nozzle 2',
      'Nozzle 3',
      'Nozzle 4',
      'Nozzle 5',
      'Nozzle 6',
      'Nozzle 7',
      'Nozzle 8',
      'Manifold A',
      'Manifold B',
    ],
    body: 'nozzle',
  },
  {
    names: ['Preheat plate 1', 'Preheat plate 2', 'Forming plate', 'Sealing roll', 'Sealing plate', 'Coding bar'],
    body: 'platen',
  },
  {
    names: [
      'Siegelbalken 1',
      'Siegelbalken 2',
      'Siegelbalken 3',
      'Längsnaht',
      'Quernaht',
      'Heizplatte oben',
      'Heizplatte unten',
    ],
    body: 'bar',
  },
  { names: ['Sone 1', 'Sone 2', 'Sone 3', 'Sone 4', 'Sone 5', 'Sone 6'], body: 'barrel' },
  { names: ['Mâchoire avant', 'Mâchoire arrière', 'Soudure longue', 'Plaque haute', 'Plaque basse'], body: 'bar' },
  { names: ['Mordaza 1', 'Mordaza 2', 'Mordaza 3', 'Placa superior', 'Placa inferior'], body: 'bar' },
  { names: ['Zona 1', 'Zona 2', 'Zona 3', 'Zona 4', 'Zona 5', 'Zona 6'], body: 'nozzle' },
  { names: ['Värmezon 1', 'Värmezon 2', 'Värmezon 3', 'Värmezon 4'], body: 'platen' },
];

export const machineNames: readonly (readonly string[])[] = [
  ['M1', 'M2', 'M3', 'M4'],
  ['L1', 'L2', 'L3', 'L4'],
  ['Line 1', 'Line 2', 'Line 3', 'Line 4'],
  ['PK01', 'PK02', 'PK03', 'PK04'],
  ['Sealer A', 'Sealer B', 'Former', 'Sealer C'],
  ['EX1', 'EX2', 'EX3', 'EX4'],
];

type Tags = Omit<TagNames, 'unitStyle'>;

/** Words for reading, set point and output that the trade uses, by language. */
export const tagSets: readonly (Tags & { readonly language: string })[] = [
  { language: 'en', reading: 'PV', setpoint: 'SP', output: 'OP', joiner: '.', place: 'after' },
  { language: 'en', reading: 'PV', setpoint: 'SP', output: 'OUT', joiner: ' ', place: 'after' },
  { language: 'en', reading: 'PV', setpoint: 'SV', output: 'MV', joiner: '_', place: 'after' },
  { language: 'en', reading: 'PV', setpoint: 'SP', output: 'CV', joiner: '/', place: 'after' },
  { language: 'en', reading: 'Actual', setpoint: 'Setpoint', output: 'Output', joiner: ' ', place: 'after' },
  { language: 'en', reading: 'act', setpoint: 'set', output: 'pwr', joiner: '_', place: 'after' },
  { language: 'en', reading: 'Temperature', setpoint: 'Setpoint', output: 'Power', joiner: ' ', place: 'after' },
  {
    language: 'en',
    reading: 'Process value',
    setpoint: 'Set value',
    output: 'Control output',
    joiner: ' - ',
    place: 'after',
  },
  { language: 'en', reading: 'Measured', setpoint: 'Target', output: 'Duty', joiner: ' ', place: 'after' },
  { language: 'en', reading: 'temp', setpoint: 'set temp', output: 'heat %', joiner: ' ', place: 'after' },
  { language: 'en', reading: 'PV', setpoint: 'SP', output: 'OP', joiner: ' ', place: 'brackets' },
  { language: 'en', reading: 'ActTemp', setpoint: 'SetTemp', output: 'HeatOut', joiner: '.', place: 'after' },
  { language: 'en', reading: 'PV', setpoint: 'SP', output: 'CO', joiner: '_', place: 'before' },
  { language: 'de', reading: 'Istwert', setpoint: 'Sollwert', output: 'Stellgrad', joiner: ' ', place: 'after' },
  { language: 'de', reading: 'Ist', setpoint: 'Soll', output: 'Leistung', joiner: '_', place: 'after' },
  { language: 'no', reading: 'Er-verdi', setpoint: 'Settpunkt', output: 'Pådrag', joiner: ' ', place: 'after' },
  { language: 'sv', reading: 'Ärvärde', setpoint: 'Börvärde', output: 'Utsignal', joiner: ' ', place: 'after' },
  { language: 'fr', reading: 'Mesure', setpoint: 'Consigne', output: 'Sortie', joiner: ' ', place: 'after' },
  { language: 'es', reading: 'Valor real', setpoint: 'Consigna', output: 'Salida', joiner: ' ', place: 'after' },
  { language: 'it', reading: 'Misura', setpoint: 'Setpoint', output: 'Uscita', joiner: ' ', place: 'after' },
  { language: 'nl', reading: 'Gemeten', setpoint: 'Ingesteld', output: 'Uitgang', joiner: ' ', place: 'after' },
];

export const timeHeaders = [
  'Time',
  'Timestamp',
  'DateTime',
  'Date/Time',
  'time',
  'ts',
  'Date and time',
  'Log time',
] as const;
export const localTimeHeaders: Readonly<Record<string, string>> = {
  de: 'Zeit',
  no: 'Tid',
  sv: 'Tid',
  fr: 'Horodatage',
  es: 'Fecha y hora',
  it: 'Data e ora',
  nl: 'Tijdstip',
};

export const alarmTexts: readonly AlarmTexts[] = [
  { input: 'sensor open circuit', low: 'low deviation', high: 'high deviation' },
  { input: 'Input open', low: 'Low temperature', high: 'High temperature' },
  { input: 'SENSOR BREAK', low: 'TEMP LOW', high: 'TEMP HIGH' },
  { input: 'Thermocouple/RTD fault', low: 'Temperature below tolerance', high: 'Temperature above tolerance' },
  { input: 'measured value out of range', low: 'deviation alarm low', high: 'deviation alarm high' },
  { input: 'temperature input failed', low: 'under temperature', high: 'over temperature' },
  { input: 'Probe failure', low: 'Below band', high: 'Above band' },
  { input: 'ALM 021 sensor wire break', low: 'ALM 031 temperature low', high: 'ALM 032 temperature high' },
  { input: 'Burnout', low: 'LO', high: 'HI' },
];

export const localAlarmTexts: Readonly<Record<string, AlarmTexts>> = {
  de: { input: 'Fühlerbruch', low: 'Untertemperatur', high: 'Übertemperatur' },
  no: { input: 'Følerbrudd', low: 'Lav temperatur', high: 'Høy temperatur' },
  sv: { input: 'Givarfel', low: 'Låg temperatur', high: 'Hög temperatur' },
  fr: { input: 'Rupture capteur', low: 'Température basse', high: 'Température haute' },
  es: { input: 'Rotura de sensor', low: 'Temperatura baja', high: 'Temperatura alta' },
  it: { input: 'Rottura sonda', low: 'Temperatura bassa', high: 'Temperatura alta' },
  nl: { input: 'Sensorbreuk', low: 'Temperatuur laag', high: 'Temperatuur hoog' },
};

export const stopTexts: readonly (readonly string[])[] = [
  ['Guard open', 'Product jam', 'Film end', 'Reject limit', 'Emergency stop'],
  ['Jam at infeed', 'Door open', 'Material low', 'Air pressure low', 'Drive fault', 'Operator stop'],
  ['STOP 104 jam', 'STOP 110 guard', 'STOP 121 web break', 'STOP 133 no trays'],
  ['Infeed empty', 'Outfeed full', 'Label reel empty', 'Guard opened', 'Motor overload'],
  ['Machine stopped: jam', 'Machine stopped: guard', 'Machine stopped: film', 'Machine stopped: operator'],
];

/** Codes for above and below scale in the log's own unit (common practice; see the table of codes in the sensor notes). */
export const highCodes = {
  C: [3276.7, 32767, 999.9, 9999, 850, 870, 1372, 999, 6553.5, 1200],
  F: [3276.7, 32767, 1562, 1598, 999.9, 9999, 2501.6, 999],
} as const;
export const lowCodes = {
  C: [-200, -242, -99.9, -3276.8, -32768, -100, -999.9],
  F: [-328, -459.7, -99.9, -3276.8, -403.6, -148, -999.9],
} as const;
export const textCodes = [
  '####',
  'OL',
  'OPEN',
  '-----',
  'Bad',
  'Open circuit',
  'O.C.',
  'Err',
  '+++++',
  'S.Br',
  'Overrange',
  '#####',
] as const;
export const qualityWords = [
  { good: 'Good', bad: 'Bad' },
  { good: 'GOOD', bad: 'BAD' },
  { good: '192', bad: '0' },
  { good: 'OK', bad: 'FAULT' },
  { good: 'Good', bad: 'Bad: sensor failure' },
  { good: '1', bad: '0' },
] as const;
export const runWords = [
  { running: 'RUN', stopped: 'STOP' },
  { running: 'Running', stopped: 'Stopped' },
  { running: 'Auto', stopped: 'Idle' },
  { running: 'ON', stopped: 'OFF' },
  { running: 'Production', stopped: 'Standstill' },
] as const;
export const runNames = {
  flag: ['Running', 'Run', 'MachineRunning', 'In production'],
  word: ['State', 'Status', 'Mode', 'Machine state'],
  speed: ['Speed', 'Line speed', 'Cycles/min', 'Speed [1/min]'],
} as const;
