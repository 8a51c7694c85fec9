import { describe, expect, test } from 'vitest';
import { namedZone, readEventTexts } from '../../make/event-file.js';

type States = readonly [string, string, string];
/** Messages of an open sensor, too hot, too cold, a heater, a stop. */
type Texts = readonly [string, string, string, string, string];

/** Zone word, header, words for come, acknowledged and gone, and messages; common practice. */
const lists: readonly (readonly [string, string, string, States, Texts])[] = [
  [
    ...(['Turkish', 'Bölge ', 'Tarih;Kaynak;Alarm Metni;Durum'] as const),
    ['Geldi', 'Onaylandı', 'Gitti'],
    ['Sensör koptu', 'Aşırı sıcaklık', 'Düşük sıcaklık', 'Isıtıcı arızası', 'Acil durdurma'],
  ],
  [
    ...(['Turkish in capitals', 'BÖLGE ', 'TARİH SAAT;BÖLGE;MESAJ;ALARM DURUMU'] as const),
    ['AKTİF', 'ONAYLI', 'PASİF'],
    ['SENSÖR KOPUK', 'SICAKLIK YÜKSEK', 'SICAKLIK DÜŞÜK', 'ISITICI ARIZASI', 'KAPI AÇIK'],
  ],
  [
    ...(['Finnish', 'Vyöhyke ', 'Aika;Lähde;Hälytys;Tila'] as const),
    ['Aktiivinen', 'Kuitattu', 'Poistunut'],
    ['Anturi poikki', 'Ylilämpötila', 'Lämpötila liian matala', 'Lämmitysvastus poikki', 'Hätäseis'],
  ],
  [
    ...(['Danish', 'Zone ', 'Tidspunkt;Kilde;Alarmtekst;Status'] as const),
    ['Kommet', 'Kvitteret', 'Gået'],
    ['Følerbrud', 'Temperatur for høj', 'Temperatur for lav', 'Varmelegeme defekt', 'Nødstop'],
  ],
  [
    ...(['Hungarian', 'Zóna ', 'Időpont;Forrás;Riasztás;Állapot'] as const),
    ['Bejött', 'Nyugtázva', 'Megszűnt'],
    ['Érzékelő szakadás', 'Túl magas hőmérséklet', 'Alacsony hőmérséklet', 'Fűtőbetét hiba', 'Vészleállítás'],
  ],
  [
    ...(['Romanian', 'Zona ', 'Data și ora;Sursă;Mesaj;Stare'] as const),
    ['Apărut', 'Confirmat', 'Dispărut'],
    ['Senzor întrerupt', 'Temperatură prea mare', 'Temperatură scăzută', 'Defect rezistență', 'Ușă deschisă'],
  ],
  [
    ...(['Slovak', 'Zóna ', 'Dátum a čas;Zdroj;Hlásenie;Stav'] as const),
    ['Vznik', 'Potvrdené', 'Zánik'],
    ['Prerušený snímač', 'Vysoká teplota', 'Nízka teplota', 'Porucha ohrevu', 'Kryt otvorený'],
  ],
  [
    ...(['Croatian', 'Zona ', 'Vrijeme;Izvor;Poruka;Stanje'] as const),
    ['Nastanak', 'Potvrđeno', 'Nestanak'],
    ['Prekid sonde', 'Visoka temperatura', 'Niska temperatura', 'Kvar grijača', 'Nužni stop'],
  ],
  [
    ...(['Russian', 'Зона ', 'Дата и время;Источник;Сообщение;Состояние'] as const),
    ['Появилась', 'Квитирована', 'Снята'],
    ['Обрыв датчика', 'Перегрев', 'Низкая температура', 'Обрыв нагревателя', 'Аварийный останов'],
  ],
  [
    ...(['Ukrainian', 'Зона ', 'Дата і час;Джерело;Повідомлення;Стан'] as const),
    ["З'явилась", 'Квитовано', 'Зникла'],
    ['Обрив термопари', 'Перегрів', 'Низька температура', 'Обрив нагрівача', 'Аварійна зупинка'],
  ],
  [
    ...(['Greek', 'Ζώνη ', 'Ημερομηνία;Πηγή;Μήνυμα;Κατάσταση'] as const),
    ['Ενεργός', 'Αναγνωρίστηκε', 'Αποκατάσταση'],
    ['Διακοπή αισθητήρα', 'Υπερθέρμανση', 'Χαμηλή θερμοκρασία', 'Βλάβη αντίστασης', 'Πόρτα ανοικτή'],
  ],
  [
    ...(['Japanese', 'ゾーン', '日時;発生元;メッセージ;状態'] as const),
    ['発生', '確認', '復旧'],
    ['熱電対断線', '温度上限警報', '温度下限警報', 'ヒータ断線', '非常停止'],
  ],
  [
    ...(['Chinese', '温区', '时间;来源;报警内容;状态'] as const),
    ['发生', '已确认', '恢复'],
    ['热电偶断线', '温度过高', '温度过低', '加热器故障', '急停'],
  ],
  [
    ...(['Korean', '존', '일시;발생원;메시지;상태'] as const),
    ['발생', '확인', '해제'],
    ['센서 단선', '과열', '저온', '히터 단선', '비상정지'],
  ],
  // From memory, as the words of these languages are; not held against a real log.
  [
    ...(['Lithuanian', 'Zona ', 'Laikas;Šaltinis;Pranešimas;Būsena'] as const),
    ['Atsirado', 'Patvirtinta', 'Dingo'],
    ['Jutiklio nutrūkimas', 'Per aukšta temperatūra', 'Per žema temperatūra', 'Šildytuvo gedimas', 'Avarinis stop'],
  ],
  [
    ...(['Latvian', 'Zona ', 'Laiks;Avots;Ziņojums;Stāvoklis'] as const),
    ['Radās', 'Apstiprināts', 'Beidzies'],
    [
      'Devēja pārrāvums',
      'Pārāk augsta temperatūra',
      'Pārāk zema temperatūra',
      'Sildītāja bojājums',
      'Avārijas apstāšanās',
    ],
  ],
  [
    ...(['Estonian', 'Tsoon ', 'Aeg;Allikas;Teade;Olek'] as const),
    ['Tekkinud', 'Kinnitatud', 'Lõppenud'],
    ['Anduri katkestus', 'Liiga kõrge temperatuur', 'Liiga madal temperatuur', 'Kütte rike', 'Hädaseiskamine'],
  ],
  [
    ...(['Bulgarian', 'Зона ', 'Дата и час;Обект;Съобщение;Състояние'] as const),
    ['Настъпи', 'Потвърден', 'Приключи'],
    ['Прекъснат датчик', 'Прегряване', 'Ниска температура', 'Повреда на нагревателя', 'Аварийно спиране'],
  ],
  [
    ...(['Vietnamese', 'Vùng ', 'Ngày giờ;Đối tượng;Nội dung cảnh báo;Trạng thái'] as const),
    ['Phát sinh', 'Đã được xác nhận', 'Bình thường'],
    ['Đứt cảm biến', 'Nhiệt độ cao', 'Nhiệt độ thấp', 'Đứt điện trở nhiệt', 'Dừng khẩn cấp'],
  ],
  [
    ...(['Indonesian', 'Zona ', 'Waktu kejadian;Sumber;Keterangan;Status alarm'] as const),
    ['Aktif', 'Dikonfirmasi', 'Kembali normal'],
    ['Sensor putus', 'Suhu tinggi', 'Suhu rendah', 'Pemanas putus', 'Berhenti darurat'],
  ],
  [
    ...(['Thai', 'โซน ', 'เวลา;แหล่งที่มา;ข้อความ;สถานะ'] as const),
    ['เกิดขึ้น', 'รับทราบ', 'กลับสู่ปกติ'],
    ['เซนเซอร์ขาด', 'อุณหภูมิสูง', 'อุณหภูมิต่ำ', 'ฮีตเตอร์เสีย', 'หยุดฉุกเฉิน'],
  ],
  [
    ...(['Arabic', 'المنطقة ', 'الوقت;المصدر;الرسالة;الحالة'] as const),
    ['نشط', 'تم الإقرار', 'انتهى'],
    ['انقطاع الحساس', 'ارتفاع درجة الحرارة', 'انخفاض درجة الحرارة', 'عطل السخان', 'توقف طارئ'],
  ],
  [
    ...(['Hebrew', 'אזור ', 'זמן;מקור;הודעה;מצב'] as const),
    ['פעיל', 'אושר', 'הסתיים'],
    ['נתק בחיישן', 'טמפרטורה גבוהה', 'טמפרטורה נמוכה', 'תקלת גוף חימום', 'עצירת חירום'],
  ],
];
const kinds = ['sensor-open', 'temperature-high', 'temperature-low', 'heater', 'machine-stop'];
const hourMs = 3_600_000;
const startMs = Date.UTC(2026, 8, 6, 6);

describe('come, acknowledged and gone, kinds and zones in', () => {
  test.each(lists)('%s', async (_, zone, header, states, texts) => {
    const zones = [namedZone(0, `${zone}1`), namedZone(1, `${zone}2`)];
    const rows = texts.flatMap((text, i) =>
      states.map((state, k) => {
        const time = new Date(startMs + i * hourMs + k * 60_000).toISOString().slice(0, 19);
        return `${time};${i < 4 ? `${zone}${1 + (i % 2)}` : 'SPS'};${text};${state}`;
      }),
    );
    const { alarms, problems } = await readEventTexts({ 'list.csv': `${[header, ...rows].join('\n')}\n` }, zones);
    expect(problems).toEqual([]);
    expect(alarms.map((it) => [it.kind, it.zone, it.acknowledgedMs - it.startMs, it.endMs - it.startMs])).toEqual(
      kinds.map((kind, i) => [kind, i < 4 ? i % 2 : null, 60_000, 120_000]),
    );
  });
});

test.each([
  ['Зона 1 обрыв датчика', ': появилась', ': снята', 'Зона 1'],
  ['ゾーン1 熱電対断線', '発生', '復旧', 'ゾーン1'],
  ['温区1断线', '发生', '恢复', '温区1'],
])('the state stands at the end of the message: %s', async (text, come, gone, zone) => {
  const lines = [0, 1, 2].flatMap((hour) => [
    `2026-09-06 0${hour}:00:00;${text}${come}`,
    `2026-09-06 0${hour}:01:00;${text}${gone}`,
  ]);
  const { alarms } = await readEventTexts({ 'alarms.csv': `Time;Alarm\n${lines.join('\n')}\n` }, [namedZone(0, zone)]);
  expect(alarms.map((it) => [it.kind, it.zone, it.endMs - it.startMs])).toEqual(
    [0, 1, 2].map(() => ['sensor-open', 0, 60_000]),
  );
});
