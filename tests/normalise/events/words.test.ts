import { describe, expect, test } from 'vitest';
import { alarmKind } from '../../../src/normalise/events/alarm-kind.js';
import { zoneMatcher } from '../../../src/normalise/events/match-zone.js';
import { labelReader } from '../../../src/normalise/events/label-meaning.js';
import { isSensorReplacement, repairCause } from '../../../src/normalise/events/repair-words.js';
import { makeZone } from '../../make/blocks.js';
import { namedZone } from '../../make/event-file.js';

describe('one vocabulary from the words of the trade (common practice)', () => {
  test.each([
    ['sensor open circuit', 'sensor-open'],
    ['Fühlerbruch', 'sensor-open'],
    ['rupture sonde', 'sensor-open'],
    ['Rottura termocoppia', 'sensor-open'],
    ['rotura de sonda', 'sensor-open'],
    ['Følerbrudd', 'sensor-open'],
    ['PV out of range', 'sensor-fault'],
    ['temperature input fault', 'sensor-fault'],
    ['Messbereich überschritten', 'sensor-fault'],
    ['below set point limit', 'deviation-low'],
    ['over set point limit', 'deviation-high'],
    ['low deviation', 'deviation-low'],
    ['Übertemperatur', 'temperature-high'],
    ['temperature low', 'temperature-low'],
    ['high', 'temperature-high'],
    ['heater open circuit', 'heater'],
    ['Heizungsausfall', 'heater'],
    ['communication lost', 'communication'],
    ['watch the paint dry', 'other'],
  ])('zone alarm "%s" is %s', (text, kind) => expect(alarmKind(text, true)).toBe(kind));

  test.each([
    'Guard open',
    'Jam detected',
    'Material end',
    'Reject limit reached',
    'Not-Halt',
    'Schutztür offen',
    "Arrêt d'urgence",
  ])('machine alarm "%s" is a machine stop', (text) => expect(alarmKind(text, false)).toBe('machine-stop'));
  test('a low of something else is no temperature', () => {
    expect(alarmKind('FLW COND CW LOW ALM', false)).toBe('other');
  });
});

describe('zones are found whatever the signs', () => {
  const zones = [
    namedZone(0, 'M1 Zone 1', 'M1'),
    namedZone(1, 'M1 Zone 10', 'M1'),
    namedZone(2, 'M2 Zone 1', 'M2'),
    namedZone(3, 'M2 TIC101', 'M2'),
    namedZone(4, 'UpperSeal_L', 'M3'),
  ];
  const match = zoneMatcher(zones, [{ name: 'UpperSeal_L', reading: 'AI_0417' }]);
  const find = (clues: Partial<Parameters<typeof match>[0]>) =>
    match({ zone: '', machine: '', source: '', message: '', ...clues });
  test.each([
    [{ source: 'M1 Zone 1' }, 0],
    [{ source: 'm1_zone_01' }, 0],
    [{ source: 'M1.Zone10' }, 1],
    [{ source: 'Zone 1', machine: 'M2' }, 2],
    [{ machine: 'M1', message: 'Heizzone 1 Fühlerbruch' }, 0],
    [{ machine: 'M1', zone: '10' }, 1],
    [{ machine: 'M2', message: 'Z1 high' }, 2],
    [{ source: 'M2', message: 'TAH-101 high' }, 3],
    [{ source: 'Upper Seal L' }, 4],
    [{ source: 'AI_0417' }, 4],
    [{ source: 'Machine' }, null],
  ])('%o', (clues, zone) => expect(find(clues).zone).toBe(zone));
  test('a name on two machines is given to neither, and said', () => {
    expect(find({ source: 'Zone 1' })).toMatchObject({ zone: null, isAmbiguous: true });
  });
});

describe('zone and message in one text, whichever stands first', () => {
  const read = labelReader([namedZone(0, 'M1.Lower platen L'), namedZone(1, 'M1.Lower platen R')], { zones: [] });
  test.each([
    ['M1.Lower platen L: sensor open circuit', 'sensor-open', 0],
    ['sensor open circuit - M1.Lower platen L', 'sensor-open', 0],
    ['low deviation - M1.Lower platen R', 'deviation-low', 1],
  ])('%s', (message, kind, zone) => {
    const label = { source: '', zone: '', machine: '', message, code: '', priority: '' };
    expect(read(label)).toMatchObject({ kind, zone });
  });
});

describe('maintenance words', () => {
  test.each([
    ['Replaced RTD', 'element open', 'sensor', true],
    ['Replaced sensor', 'terminal loose', 'wiring', true],
    ['Sensor replaced', 'element open at its own connector', 'sensor', true],
    ['Replaced heater', 'heating element open at its terminals', 'heater', false],
    ['Fühler getauscht', 'Fühlerbruch', 'sensor', true],
    ['Byttet føler', '', 'sensor', true],
    ['Tightened terminal', 'loose screw', 'wiring', false],
    ['Replaced heater band', 'one phase out', 'heater', false],
    ['Replaced input card', 'no reading on four zones', 'input', false],
    ['Checked sensor', 'no fault found', 'none', false],
    ['Replaced I/O card', '', 'input', false],
    ['Moved to another channel', 'I/O module, channel 3 dead', 'input', false],
    ['Fühler geprüft', 'i.O.', 'none', false],
    ['Lubricated chain', '', null, false],
  ])('%s / %s', (done, found, cause, isReplacement) => {
    expect([repairCause(done, found), isSensorReplacement(done)]).toEqual([cause, isReplacement]);
  });
});

test('a damaged text of many thousand words costs no more than its length, and a name in it is still found', () => {
  const match = zoneMatcher([makeZone({ name: 'Front jaw', machine: 'Sealer 1' })], []);
  const noise = 'x '.repeat(20_000); // every run of its words would be some 10¹² letters
  const clues = { zone: '', machine: '', source: '' };
  expect(match({ ...clues, message: `${noise} Sealer 1 front jaw ${noise}` })).toMatchObject({ zone: 0 });
  expect(match({ ...clues, message: noise }).zone).toBeNull();
});

describe('languages whose words are from memory', () => {
  test.each([
    ['Zona 3: jutiklio nutrūkimas', 'sensor-open'],
    ['Zona 3: per žema temperatūra', 'temperature-low'],
    ['Zonā 3 pārāk augsta temperatūra', 'temperature-high'],
    ['Sildītāja pārrāvums zonā 3', 'heater'],
    ['Tsoon 3 anduri katkestus', 'sensor-open'],
    ['Tsoon 3 kõrge temperatuur', 'temperature-high'],
    ['Зона 3 прекъсната термодвойка', 'sensor-open'],
    ['Зона 3 неизправност на нагревателя', 'heater'],
    ['Vùng 3 đứt cặp nhiệt', 'sensor-open'],
    ['Vùng 3 nhiệt độ quá cao', 'temperature-high'],
    ['Zona 3 suhu terlalu rendah', 'temperature-low'],
    ['Zona 3 pemanas putus', 'heater'],
    ['โซน 3 เซนเซอร์ขาด', 'sensor-open'],
    ['โซน 3 อุณหภูมิสูง', 'temperature-high'],
    ['อุณหภูมิต่ำโซน 3', 'temperature-low'],
    ['المنطقة 3: انقطاع الحساس', 'sensor-open'],
    ['ارتفاع درجة الحرارة المنطقة 3', 'temperature-high'],
    ['إيقاف طوارئ', 'machine-stop'],
    ['אזור 3: חיישן מנותק', 'sensor-open'],
    ['אזור 3 טמפרטורה נמוכה', 'temperature-low'],
    ['אזור 3 תקלת תקשורת', 'communication'],
  ])('%s is %s', (text, kind) => {
    expect(alarmKind(text, false)).toBe(kind);
  });
});
