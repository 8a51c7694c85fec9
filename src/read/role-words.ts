import type { ColumnRole } from '../model/log-file.js';

/** What a word in a column's name says of the column. `temperature` alone means a reading. */
export type WordMeaning =
  Extract<ColumnRole, 'reading' | 'setpoint' | 'output' | 'running' | 'quality'> | 'temperature' | 'filler' | 'other';

/**
 * Words of column and tag names, by meaning. Languages: English, German, French, Spanish, Italian, Portuguese, Dutch,
 * Norwegian, Danish, Swedish. Lower case, without accents, parts joined by one blank; matched as whole words.
 * Common practice of controllers and historians; plant.yaml can name any column that this table does not know.
 */
export const roleWords: Readonly<Record<WordMeaning, readonly string[]>> = {
  reading: [
    ...['act', 'actual', 'actual value', 'act value', 'pv', 'process value', 'process variable', 'measured'],
    ...['measured value', 'measurement', 'reading', 'present value', 'current value', 'input', 'in', 'meas', 'mes'],
    ...['ist', 'istwert', 'ist wert', 'messwert', 'mesure', 'valeur mesuree', 'valeur reelle', 'reel', 'medida'],
    ...['valor real', 'valor medido', 'valor actual', 'medido', 'misura', 'valore attuale', 'attuale', 'reale'],
    ...['leitura', 'valor atual', 'atual', 'gemeten', 'werkelijk', 'meetwaarde', 'erverdi', 'aerverdi', 'er verdi'],
    ...['malt', 'maleverdi', 'arvarde', 'ar varde', 'matvarde', 'aktuel', 'aktuell'],
  ],
  setpoint: [
    ...['sp', 'set', 'setpoint', 'set point', 'set value', 'setvalue', 'sv', 'setp', 'stpt', 'target', 'wsp', 'csp'],
    ...[
      'set temp',
      'set temperature',
      'temp set',
      'target temp',
      'target value',
      'desired',
      'demand temp',
      'working setpoint',
    ],
    ...['soll', 'sollwert', 'soll wert', 'solltemperatur', 'consigne', 'cons', 'point de consigne', 'consigna'],
    ...[
      'punto de ajuste',
      'valor de consigna',
      'setpunt',
      'gewenst',
      'ingesteld',
      'instelwaarde',
      'ingestelde waarde',
      'impostato',
    ],
    ...['valore impostato', 'imposta', 'riferimento', 'alvo', 'valor desejado', 'ajuste', 'skalverdi', 'skal verdi'],
    ...['settpunkt', 'borvarde', 'bor varde', 'onsket', 'saetpunkt', 'indstilling'],
  ],
  output: [
    ...[
      'out',
      'output',
      'cv',
      'mv',
      'op',
      'duty',
      'duty cycle',
      'power',
      'pwr',
      'heat',
      'heating',
      'heater',
      'heat output',
    ],
    ...[
      'heater output',
      'control output',
      'co',
      'controller output',
      'manipulated variable',
      'control value',
      'control variable',
    ],
    ...['power output', 'heater power', 'heat demand', 'heat duty', 'pid out', 'pid output', 'y'],
    ...['stellgrad', 'stellwert', 'stellgrosse', 'stellgroesse', 'ausgang', 'ausgangsgrad', 'leistung', 'heizleistung'],
    ...['heizung', 'sortie', 'puissance', 'chauffe', 'commande', 'salida', 'potencia', 'uscita', 'potenza', 'saida'],
    ...['vermogen', 'uitgang', 'uitsturing', 'padrag', 'utgang', 'effekt', 'ydelse', 'udgang', 'utsignal'],
  ],
  running: [
    ...[
      'running',
      'run',
      'is running',
      'machine running',
      'machine state',
      'machine status',
      'state',
      'status',
      'mode',
    ],
    ...['speed', 'line speed', 'machine speed', 'rate', 'cycles', 'cycle rate', 'production', 'in production'],
    ...[
      'betrieb',
      'in betrieb',
      'lauft',
      'laeuft',
      'zustand',
      'maschinenzustand',
      'geschwindigkeit',
      'drehzahl',
      'takt',
    ],
    ...['marche', 'en marche', 'etat', 'vitesse', 'marcha', 'en marcha', 'estado', 'velocidad', 'marcia', 'stato'],
    ...[
      'velocita',
      'velocidade',
      'em marcha',
      'draait',
      'in bedrijf',
      'snelheid',
      'drift',
      'i drift',
      'hastighet',
      'tilstand',
    ],
  ],
  quality: [
    'quality',
    'qual',
    'status code',
    'statuscode',
    'opc quality',
    'qualitat',
    'qualite',
    'calidad',
    'qualita',
    'q',
  ],
  temperature: [
    ...[
      'temp',
      'temperature',
      'temps',
      'tmp',
      't',
      'temperatur',
      'temperatura',
      'temperaturen',
      'temperaturer',
      'tc',
      'rtd',
    ],
    ...['thermocouple', 'thermoelement', 'pt100', 'pt1000', 'sensor temp', 'thermometer'],
  ],
  // Words that say nothing of the role and are not part of the zone's name.
  filler: [
    'value',
    'val',
    'wert',
    'valeur',
    'valor',
    'valore',
    'waarde',
    'verdi',
    'varde',
    'vaerdi',
    'signal',
    'avg',
    'mean',
    'pid',
  ],
  // Quantities that are not heater zones.
  other: [
    ...[
      'humidity',
      'air humidity',
      'rh',
      'ah',
      'relative humidity',
      'feuchte',
      'humidite',
      'humedad',
      'umidita',
      'moisture',
    ],
    ...[
      'hygrometer',
      'pressure',
      'press',
      'druck',
      'pression',
      'presion',
      'pressione',
      'druk',
      'trykk',
      'vacuum',
      'current',
    ],
    ...[
      'amps',
      'ampere',
      'strom',
      'courant',
      'corriente',
      'corrente',
      'stroom',
      'voltage',
      'volt',
      'volts',
      'spannung',
    ],
    ...[
      'tension',
      'flow',
      'flow rate',
      'volume flow',
      'durchfluss',
      'debit',
      'caudal',
      'portata',
      'level',
      'niveau',
      'nivel',
    ],
    ...['torque', 'drehmoment', 'couple', 'vibration', 'accelerometer', 'rms', 'energy', 'kwh', 'frequency', 'weight'],
    ...[
      'count',
      'counter',
      'position',
      'damper',
      'valve',
      'fan',
      'wind',
      'rain',
      'solar',
      'radiation',
      'co2',
      'nox',
      'no2',
    ],
    ...[
      'error',
      'anomaly',
      'changepoint',
      'annotation',
      'label',
      'comment',
      'remark',
      'id',
      'index',
      'no',
      'nr',
      'batch',
      'recipe',
    ],
    ...[
      'operator',
      'user',
      'shift',
      'alarm',
      'event',
      'message',
      'fault',
      'sequence',
      'watermark',
      'latitude',
      'longitude',
    ],
    ...[
      'cool',
      'cooling',
      'kuhlung',
      'kuehlung',
      'deviation',
      'dev',
      'hysteresis',
      'band',
      'high limit',
      'low limit',
      'limit',
    ],
  ],
};

/** Words by which a time column may be called beside those of time-format: none means time by content alone. */
export const tagNames =
  /^(tag|tag ?name|tagname|name|point|point ?name|item|variable|var ?name|channel|signal|sensor|zone|parameter|series|metric|measurement|object|source|messstelle|kanal|variabele|etiqueta|punto|canal|voie|mesure|id)$/;
export const valueNames =
  /^(value|val|wert|messwert|valeur|valor|valore|waarde|verdi|varde|vaerdi|reading|data|y|vvalue|num(eric)? ?value|float ?value|average|avg)$/;
export const qualityNames =
  /^(quality|qual|q|status|state|opc ?quality|quality ?code|status ?code|qualitat|qualite|calidad|qualita|good|valid|flag|flags)$/;

/** Lower case, no accents, runs of anything that is neither letter nor digit as one blank. */
export function plainWords(text: string): string {
  return text
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replaceAll('ø', 'o')
    .replaceAll('æ', 'ae')
    .replaceAll('å', 'a')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^a-z0-9%]+/g, ' ')
    .trim();
}
