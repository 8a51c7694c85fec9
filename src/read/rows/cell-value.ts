import { cellMark, type Dialect, type GoodStatus } from '../../model/log-file.js';
import { foldText, list } from '../../words/fold.js';

/** What a cell of a number column holds. `value` is NaN unless `mark` is number. */
export interface CellValue {
  readonly value: number;
  readonly mark: number;
}

/** Words and signs that instruments and historians write for an open or over-range input (common practice). */
const openWords =
  /^(#{2,}[\w/!?]*|o\.?l\.?|-?o\.?f\.?|over ?(load|range|flow)?|overrange|open|opn|s\.?b(r(ea)?k)?\.?|sensor ?(open|break|bruch|bruk)|sens\.? ?(brk|break)|br(ea)?k|broken|burn ?-?out|f(u|ü)hlerbruch|bruch|rupture|ouvert|abierto|aperto|u\.?r\.?|under ?(range|flow)|inf(inity)?|[+-]inf(inity)?|h{3,}|l{3,}|[-–—_=~^]{3,}|\*{2,}|1\.?#(inf|qnan|ind).*)$/i;

/** Signs for "nothing here" (common practice); three dashes and more fill a display and mean an open input. */
const blankWords = /^(|[-–—_]{1,2}|\.|null|nil|none|\(null\)|<null>|n\.?a\.?|empty)$/i;

/**
 * Errors of a spreadsheet's own sums (ECMA-376 part 1, 18.17.3, and the newer ones, from memory): whoever made the file
 * had nothing to write there. No input writes them.
 */
const spreadsheetErrors = /^#(value!|ref!|name\?|div\/0!|num!|null!|n\/a|calc!|spill!|getting_data)$/i;

const plainPoint = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;
const plainComma = /^[-+]?(\d+,?\d*|,\d+)(e[-+]?\d+)?$/i;
/** What may stand behind a number in its cell. */
export const unitTail = /\s*(°(?:\s?[CFK])?|[℃℉]|deg\.?\s?[CFK]?|º\s?[CF]|[%％]|[CFK])$/i;
const minusSigns = /^[−–]/;
/** "1,5-": the minus behind the number, as commercial systems write it (common practice). */
const minusBehind = /^\d[\d.,]*-$/;

/**
 * Reads a cell that should hold a number: decimal mark and thousands mark of the dialect, a unit behind the number,
 * words for an open input, signs for nothing. Never throws.
 */
export function readCell(cell: string, dialect: Pick<Dialect, 'decimal' | 'thousands'>): CellValue {
  const text = cell.trim();
  const value = readNumber(text, dialect);
  if (!Number.isNaN(value)) return { value, mark: cellMark.number };
  if (blankWords.test(text) || spreadsheetErrors.test(text)) return blank;
  if (openWords.test(text)) return open;
  const bare = readNumber(text.replace(unitTail, ''), dialect);
  if (!Number.isNaN(bare) && unitTail.test(text)) return { value: bare, mark: cellMark.number };
  return other;
}

const blank: CellValue = { value: NaN, mark: cellMark.blank };
const open: CellValue = { value: NaN, mark: cellMark.openText };
const other: CellValue = { value: NaN, mark: cellMark.otherText };

/** A number in the dialect's notation, or NaN. Never throws. */
export function readNumber(text: string, { decimal, thousands }: Pick<Dialect, 'decimal' | 'thousands'>): number {
  const signed = minusSigns.test(text) ? `-${text.slice(1)}` : minusBehind.test(text) ? `-${text.slice(0, -1)}` : text;
  const plain = decimal === ',' ? plainComma : plainPoint;
  if (plain.test(signed)) return Number(decimal === ',' ? signed.replace(',', '.') : signed);
  if (thousands !== '' && isGroupedNumber(signed, decimal, thousands)) {
    const joined = signed.replaceAll(thousands, '').replace(/[\s\u00a0\u202f]/g, '');
    return Number(joined.replace(',', '.'));
  }
  // A point in a file of decimal commas (or no mark at all) is still a number, unless the point groups thousands.
  if (decimal === ',' && thousands !== '.' && plainPoint.test(signed)) return Number(signed);
  return NaN;
}

const groupedCache = new Map<string, RegExp>();

function isGroupedNumber(text: string, decimal: string, thousands: string): boolean {
  const key = decimal + thousands;
  let grouped = groupedCache.get(key);
  if (!grouped) {
    const mark = thousands === ' ' ? '[ \\u00a0\\u202f]' : `\\${thousands}`;
    grouped = new RegExp(`^[-+]?\\d{1,3}(${mark}\\d{3})+(\\${decimal}\\d*)?$`);
    groupedCache.set(key, grouped);
  }
  return grouped.test(text);
}

/** Words of running and standing machines, in the languages of the roles table, folded (common practice). */
const runningWords = new Set(
  list(`
    run, running, on, true, yes, auto, automatic, production, producing, active, execute, executing, started, start, work,
    working, ja, ein, aktiv, betrieb, lauft, produktion, automatik, oui, marche, si, produccion, marcha, funcionando,
    marcia, produzione, sim, aan, bezig, kjorer, korer, kor, gar, pa, till, drift, i drift, tak, praca, pracuje, ano, chod, bezi,
    kylla, kay, kaynnissa, paalla, igen, uzem, uzemel, fut, be, mukodik, evet, acik, calisiyor, da, pornit, in functiune,
    merge, dela, deluje, radi, taip, dirba, veikia, darbojas, jah, tootab, sees,
    да, работает, работа, пуск, вкл, включено, включен, включена, в работе, авто, так, працює, робота, увімкнено, увімк,
    работи, ναι, λειτουργια, σε λειτουργια, ανοικτο,
    运行, 运行中, 运转, 开机, 开, 启动, 生产, 生产中, 自动, 是, 運行, 運行中, 運轉, 運轉中, 開機, 開, 啟動, 生產, 生產中,
    運転, 運転中, 稼働, 稼働中, 稼動, 稼動中, 自動, 自動運転, 入, 가동, 가동중, 운전, 운전중, 동작, 생산중, 예, 켜짐`),
);
const standingWords = new Set(
  list(`
    stop, stopped, off, false, no, idle, standby, held, hold, halt, inactive, fault, faulted, down, ready, aborted,
    complete, completed, setup, manual, maintenance, cleaning, pause, paused, suspended, waiting, blocked, starved, jam,
    jammed, emergency, estop, nein, aus, inaktiv, stillstand, steht, wartung, storung, non, arret, arrete, parada, parado,
    fermo, ferma, nao, nee, uit, stilstand, nei, nej, av, fra, fran, star, stoppet, stoppad, stopp, nie, stoi, zatrzymana,
    wylaczona, postoj, ne, stoji, vypnuto, vypnute, ei, seis, pois, nem, ki, all, leallt, leallitva, hayir, durdu, duruyor,
    kapali, durus, nu, oprit, oprita, oprire, ustavljen, ustavljeno, zaustavljen, stovi, sustojo, sustabdyta, aptureta,
    apturets, ne, seisab, valjas, peatatud, arresto,
    нет, стоп, остановлен, остановлена, останов, стоит, выкл, выключено, выключен, выключена, простой, авария, ні,
    зупинено, зупинка, вимкнено, вимк, не, спряна, спрян, οχι, σταση, σταματημενη, κλειστο,
    停止, 停止中, 停机, 停, 关机, 关, 待机, 故障, 手动, 否, 停機, 停機中, 關機, 關, 待機, 待機中, 手動, 異常, 断, 切,
    정지, 정지중, 대기, 대기중, 고장, 아니오, 꺼짐`),
);

/** Short words that say this only where nothing stands beside them: "Alarm all" and "Zone be" are no states. */
const onlyAlone = new Set(
  list('be, ki, all, pa, av, fra, fran, till, star, gar, kor, kay, fut, da, nu, dela, radi, sees, 入, 切, 開, 开'),
);

/** 1 = runs, 0 = stands, NaN = a word that says neither. Numbers are left to the caller. Never throws. */
export function readRunningWord(text: string): number {
  const word = foldText(text.trim());
  if (runningWords.has(word)) return 1;
  if (standingWords.has(word)) return 0;
  if (/^(not|nicht|non|no|ikke|inte|ei|не) /.test(word)) return 0;
  const parts = word.split(/[\s_-]+/);
  for (const part of [parts.at(-1) ?? '', parts[0] ?? '']) {
    if (onlyAlone.has(part)) continue;
    if (runningWords.has(part)) return 1;
    if (standingWords.has(part)) return 0;
  }
  return NaN;
}

/**
 * What a quality cell says of its value: words, or status numbers of OPC (classic: 192 and above good, 64 to 191
 * uncertain, below bad; unified: 0 good, top two bits 01 uncertain and 10 bad; from memory). Uncertain values count as
 * good, because most controllers say uncertain of a value they only estimate the age of.
 *
 * @param goodStatus What a number means by good in this file.
 * @returns true = do not trust the value. Blank cells are good. Never throws.
 */
export function isBadQuality(cell: string, goodStatus: GoodStatus): boolean {
  const text = cell.trim();
  if (text === '') return false;
  if (/^0x[\da-f]+$/i.test(text) || /^\d+(\.0+)?$/.test(text)) return isBadStatus(Number(text), goodStatus);
  return /bad|invalid|error|fail|fault|not ?connected|no ?comm|comm|schlecht|ungultig|ungültig|mauvais|malo|cattiv|offline|stale|out ?of ?service|questionable|substitut/i.test(
    text,
  );
}

function isBadStatus(status: number, goodStatus: GoodStatus): boolean {
  if (status >= 0x40000000) return status >= 0x80000000;
  if (goodStatus === 'zero') return status !== 0;
  if (goodStatus === 'one') return status !== 1;
  return status < 64;
}
