import { list } from '../../words/fold.js';
import type { AlarmWords } from './alarm-words.js';

/** A fault, and no word of what: in a list of alarms of zones it is the sensor's, beside a zone's name it may be any. */
export const faultOfAnyKind = list(`
  fault, failure, error, fehler, defaut, guasto, errore, fallo, falha, fout, fel, feil, fejl, blad, awaria, ariza, arizasi,
  hata, hatasi, vika, hairio, virhe, hiba, defect, eroare, porucha, chyba, napaka, kvar, greska, gedimas, klaida, bojajums,
  kluda, viga, неисправность, отказ, ошибка, сбой, несправність, відмова, помилка, повреда, грешка, βλαβη, σφαλμα, loi,
  故障, 异常, 異常, 고장, 이상`);

/**
 * Short words that say the kind only in an alarm about a heater zone: "high" alone may be a level or a flow. They are asked
 * after the telling ones, in this order; whole words, folded, * stands for more letters. Source: common practice.
 */
export const shortWords: readonly AlarmWords[] = [
  {
    kind: 'sensor-open',
    phrases: list(`
      open, break, broken, bruch, offen, rupture, coupure, rottura, rotura, breuk, brott, brudd, brud, przerwa,
      ol, sbr, sb,
      kopuk, koptu, acik devre, katki, poikki, katkos, brudt, afbrudt, szakadt, intrerupt, intrerupta,
      preruseny, prekinjen, prekinut, prekid, обрыв, обрив, διακοπη, putus`),
  },
  {
    kind: 'sensor-fault',
    phrases: list(`
      sensor, probe, sonda, fuhler*, thermoelement*, bad, invalid, short, reversed, kurzschluss, sensor*, termokupl*,
      anturi*, erzekelo*, szonda*, hoelem*, senzor*, snimac*, cidlo, tipalo, jutiklis, датчик*, термопара, αισθητηρας,
      θερμοζευγος, cam bien`),
  },
  {
    kind: 'sensor-fault',
    phrases: faultOfAnyKind,
  },
  {
    kind: 'temperature-high',
    phrases: list(`
      high, hi, hihi, high high, hh, h, over, above, hot, upper limit, high limit, hoch, zu hoch, oberer
      grenzwert, haut, haute, alto, alta, hoog, hog, hogt, hoy, hoyt, hoj, wysoka, przekroczenie gorne, max*,
      yuksek, ust limit, cok yuksek, korkea, ylaraja, yli, for hoj, magas, tul magas, felso hatar, ridicat,
      ridicata, inalt, mare, limita superioara, vysoka, vysoky, horni mez, horna hranica, visoka, visoko,
      previsoka, zgornja meja, gornja granica, auksta, augsta, korge, высокая, высокий, верхний предел, выше,
      превышение, верхн*, висока, високий, вище, перевищення, υψηλη, υψηλο, ανω οριο, cao, tinggi, 过高, 超高,
      上限, 過高, 高, 상한, 높음`),
  },
  {
    kind: 'temperature-low',
    phrases: list(`
      low, lo, lolo, low low, ll, l, under, below, cold, lower limit, low limit, niedrig, tief, zu niedrig,
      unterer grenzwert, bas, basse, basso, bassa, bajo, baja, baixo, baixa, laag, lag, lagt, lav, lavt, niska,
      przekroczenie dolne, min*,
      dusuk, alt limit, cok dusuk, matala, alaraja, ali, for lav, alacsony, tul alacsony, also hatar, scazut,
      scazuta, joasa, limita inferioara, nizka, nizky, dolni mez, dolna hranica, nizko, prenizka, nisko,
      spodnja meja, donja granica, zema, madal, низкая, низкий, нижний предел, ниже, нижн*, низька, низький,
      нижче, ниска, χαμηλη, χαμηλο, κατω οριο, thap, rendah, 过低, 超低, 下限, 過低, 低, 하한, 낮음`),
  },
  {
    // Where no more is said, the heater is meant; "heater 3 too hot" has been met above.
    kind: 'heater',
    phrases: list('加热器, 加熱器, ヒータ, 히터'),
  },
];
