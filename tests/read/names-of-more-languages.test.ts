import { describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';

type Names = (n: number) => readonly [string, string, string];

/** Names of reading, set point, output and machine state, and the words for running and standing; common practice. */
const notations: readonly (readonly [string, Names, readonly [string, string, string]])[] = [
  [
    'Turkish',
    (n) => [`Bölge ${n} Ölçülen Değer`, `Bölge ${n} Ayar Değeri`, `Bölge ${n} Isıtıcı Çıkışı`],
    ['Makine Durumu', 'Açık', 'Kapalı'],
  ],
  [
    'Turkish in capitals with its own I',
    (n) => [`${n}. BÖLGE GERÇEK`, `${n}. BÖLGE AYAR`, `${n}. BÖLGE ISITICI ÇIKIŞI`],
    ['ÇALIŞIYOR', 'EVET', 'HAYIR'],
  ],
  [
    'Turkish without its own letters',
    (n) => [`BOLGE ${n} GERCEK DEGER`, `BOLGE ${n} AYAR DEGERI`, `BOLGE ${n} CIKIS`],
    ['MAKINE DURUMU', 'CALISIYOR', 'DURUYOR'],
  ],
  [
    'Finnish',
    (n) => [`Vyöhyke ${n} mittausarvo`, `Vyöhyke ${n} asetusarvo`, `Vyöhyke ${n} lähtöteho`],
    ['Koneen tila', 'käy', 'seis'],
  ],
  [
    'Finnish without dots',
    (n) => [`ALUE ${n} LAMPOTILA`, `ALUE ${n} ASETUSARVO`, `ALUE ${n} LAMMITYS`],
    ['TILA', 'KAY', 'SEIS'],
  ],
  [
    'Danish',
    (n) => [`Zone ${n} Målt temperatur`, `Zone ${n} Indstillet temperatur`, `Zone ${n} Styresignal`],
    ['Maskintilstand', 'Kører', 'Stoppet'],
  ],
  [
    'Norwegian',
    (n) => [`Sone ${n} Prosessverdi`, `Sone ${n} Børverdi`, `Sone ${n} Varmepådrag`],
    ['Maskinstatus', 'Går', 'Står'],
  ],
  [
    'Swedish',
    (n) => [`Zon ${n} Mätvärde`, `Zon ${n} Inställt värde`, `Zon ${n} Värmeeffekt`],
    ['Drift', 'Till', 'Från'],
  ],
  [
    'Hungarian',
    (n) => [`${n}. zóna mért érték`, `${n}. zóna beállított érték`, `${n}. zóna kimenet`],
    ['Gép állapot', 'Üzemel', 'Áll'],
  ],
  [
    'Romanian',
    (n) => [`Zona ${n} Valoare măsurată`, `Zona ${n} Valoare prescrisă`, `Zona ${n} Ieșire`],
    ['Stare mașină', 'Pornit', 'Oprit'],
  ],
  [
    'Slovak',
    (n) => [`Zóna ${n} Nameraná teplota`, `Zóna ${n} Nastavená teplota`, `Zóna ${n} Výkon ohrevu`],
    ['Chod stroja', 'áno', 'nie'],
  ],
  [
    'Slovene',
    (n) => [`Cona ${n} Dejanska vrednost`, `Cona ${n} Želena vrednost`, `Cona ${n} Izhod`],
    ['Stanje stroja', 'Deluje', 'Ustavljen'],
  ],
  [
    'Lithuanian',
    (n) => [`Zona ${n} Išmatuota vertė`, `Zona ${n} Nustatyta vertė`, `Zona ${n} Išėjimas`],
    ['Būsena', 'Dirba', 'Sustojo'],
  ],
  [
    'Estonian',
    (n) => [`Tsoon ${n} Mõõdetud väärtus`, `Tsoon ${n} Seadeväärtus`, `Tsoon ${n} Väljund`],
    ['Masina olek', 'Töötab', 'Seisab'],
  ],
  [
    'Russian',
    (n) => [`Зона ${n} Текущее значение`, `Зона ${n} Заданное значение`, `Зона ${n} Мощность нагрева`],
    ['Состояние машины', 'Работает', 'Остановлена'],
  ],
  [
    'Ukrainian',
    (n) => [`Зона ${n} Поточна температура`, `Зона ${n} Задана температура`, `Зона ${n} Потужність`],
    ['Стан машини', 'Працює', 'Зупинено'],
  ],
  [
    'Greek',
    (n) => [`Ζώνη ${n} Πραγματική τιμή`, `Ζώνη ${n} Επιθυμητή τιμή`, `Ζώνη ${n} Έξοδος`],
    ['Κατάσταση μηχανής', 'Λειτουργία', 'Στάση'],
  ],
  ['Japanese', (n) => [`ゾーン${n}測定値`, `ゾーン${n}目標値`, `ゾーン${n}操作量`], ['運転状態', '運転中', '停止中']],
  [
    'Japanese, the number in front',
    (n) => [`第${n}ゾーン温度`, `第${n}ゾーン設定温度`, `第${n}ゾーンヒータ出力`],
    ['状態', '稼働', '停止'],
  ],
  ['Chinese', (n) => [`加热区${n}_当前温度`, `加热区${n}_目标温度`, `加热区${n}_功率`], ['设备状态', '运行中', '停机']],
  ['Chinese, long signs', (n) => [`${n}區測量值`, `${n}區設定值`, `${n}區輸出`], ['狀態', '運轉', '停止']],
  ['Korean', (n) => [`존 ${n} 측정온도`, `존 ${n} 설정온도`, `존 ${n} 히터출력`], ['운전상태', '가동', '정지']],
];

const rowCount = 40;
const startMs = Date.UTC(2026, 2, 2, 6);

function logText(names: Names, [state, runs, stands]: readonly [string, string, string]): string {
  const header = ['Time', ...[1, 2].flatMap(names), state];
  const rows = Array.from({ length: rowCount }, (_, i) => {
    const time = new Date(startMs + i * 60_000).toISOString().slice(0, 19);
    const zones = [1, 2].flatMap((n) => [`${140 + n + (i % 4)}.${i % 10}`, `${150 + n}.0`, `${30 + n}.5`]);
    return [time, ...zones, i < rowCount / 2 ? stands : runs];
  });
  return [header, ...rows].map((row) => `${row.join(';')}\n`).join('');
}

describe('reading, set point, output and machine state are told in', () => {
  test.each(notations)('%s', async (_, names, state) => {
    const { found, zones } = await pourFiles({ 'log.csv': logText(names, state) });
    expect(found.zones.map(({ has }) => has)).toEqual(
      [1, 2].map(() => ({ reading: true, setpoint: true, output: true, running: true })),
    );
    for (const [i, zone] of zones.entries()) {
      expect(zone.readingDegC[0]).toBe(141 + i);
      expect(zone.setpointDegC[0]).toBe(151 + i);
      expect(zone.outputPercent[0]).toBe(31.5 + i);
      expect([zone.running[0], zone.running.at(-1)]).toEqual([0, 1]);
    }
  });
});
