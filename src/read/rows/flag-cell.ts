import { flagState } from '../../model/log-file.js';
import { foldText, list } from '../../words/fold.js';

/** Words in the cells of alarm flags, folded, in the languages of the roles table (common practice). */
const flagWords: readonly (readonly [number, readonly string[]])[] = [
  [
    flagState.rest,
    list(`
      ok, o k, okay, normal, none, no, n, off, false, good, clear, cleared, inactive, healthy, no alarm, no fault, no error,
      rest, in order, i o, aus, nein, kein, keine, kein alarm, kein fehler, gut, inaktiv, non, aucun, aucune, inactif, nao,
      nenhum, nessuno, nessun allarme, normale, inattivo, ninguno, sin alarma, inactivo, nee, geen, uit, inactief, nei, nej,
      ingen, av, fra, nie, brak, norma, ne, zadny, v poradku, ei, ei halytysta, nem, nincs, hayir, yok, kapali, nu, нет,
      норма, выкл, ні, не, няма, οχι, khong, tidak, normalas, nera, nav, 正常, 无, 無, 否, なし, 정상, 없음`),
  ],
  [
    flagState.up,
    list(`
      alarm, alm, yes, y, on, true, x, active, activated, raised, set, trip, tripped, fault, flt, faulty, error, err, fail,
      failed, failure, bad, warning, warn, ein, ja, aktiv, storung, fehler, gestort, oui, actif, defaut, alarme, si, attivo,
      allarme, guasto, errore, activo, alarma, fallo, sim, ativo, falha, aan, actief, storing, fout, pa, feil, fejl, larm,
      fel, tak, awaria, blad, ano, porucha, chyba, kylla, halytys, vika, igen, hiba, evet, ariza, hata, da, eroare, да,
      авария, тревога, ошибка, вкл, так, аварія, ναι, σφαλμα, 报警, 警报, 故障, 是, 報警, 警報, 異常, アラーム, 경보, 알람,
      고장`),
  ],
  [
    flagState.high,
    list(`
      h, hi, hh, hihi, hi hi, high, high high, high alarm, hi alarm, over, over temp, overtemp, over temperature, too hot,
      hoch, zu hoch, haut, haute, alto, alta, hoog, hog, hoy, hoj, wysoka, vysoka, korkea, magas, yuksek, высокая, 高, 过高,
      上限, 높음, 상한`),
  ],
  [
    flagState.low,
    list(`
      l, lo, ll, lolo, lo lo, low, low low, low alarm, lo alarm, under, under temp, undertemp, under temperature, too cold,
      niedrig, tief, zu niedrig, zu tief, bas, basse, basso, bassa, bajo, baja, baixo, baixa, laag, lag, lav, niska, nizka,
      matala, alacsony, dusuk, низкая, 低, 过低, 下限, 낮음, 하한`),
  ],
  [
    flagState.open,
    list(`
      open, opn, break, brk, broken, burnout, burn out, sbr, sb, sensor break, sensor open, open circuit, tc open, tc break,
      rtd open, probe open, bruch, offen, fuhlerbruch, drahtbruch, rupture, coupure, rottura, rotura, aperto, abierto, breuk,
      brudd, brott, brud, przerwa, preruseno, katkos, szakadas, kopuk, обрыв, обрив, 断线, 开路, 断線, 단선`),
  ],
  [
    flagState.heater,
    list(`heater, heater break, heater fail, heater failure, heater open, heater fault, hb, hbf, ssr, ssr fail, fuse`),
  ],
];

const stateOfWord = new Map(flagWords.flatMap(([state, words]) => words.map((word) => [word, state] as const)));
/** Signs for nothing in a column of flags (common practice). */
const nothing = /^[-–—.]{1,3}$/;

/** What a word in a column of alarm flags says: one of {@link flagState}, NaN = no such word, or blank. Never throws. */
export function readFlagWord(cell: string): number {
  const text = cell.trim();
  if (nothing.test(text)) return flagState.rest;
  const word = foldText(text)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
  return stateOfWord.get(word) ?? NaN;
}

/** A flag as a number: nought at rest, anything else while the alarm stands. NaN stays. */
export function flagOfNumber(value: number): number {
  if (Number.isNaN(value)) return NaN;
  return value === 0 ? flagState.rest : flagState.up;
}
