import { list, phraseTest, wordsOf } from '../../words/fold.js';
import { plainTag } from './plain-tag.js';

/** Words of alarm flags' names, in the languages of the roles table; * stands for more letters (common practice). */
const namesAlarm = phraseTest(
  list(`
    alarm*, *alarm, alrm, *alm, alm*, al, fault*, *fault, flt, *flt, fail, failed, failure, trip, tripped, warning, warn,
    error, err, break, brk, broken, burnout, burn out, sbr, open circuit, sensor open, tc open, rtd open, probe open, input open,
    overtemp*, over temp*, undertemp*, under temp*, overrange, underrange, out of range, loop break, lba, hba,
    stor, storung*, *storung, fehler*, *fehler, *bruch, grenzwert*, defaut*, rupture*, coupure, allarm*, guasto*, rottura*,
    errore, fallo, averia, rotura*, falha*, ruptura*, storing*, fout, *breuk, larm*, *larm, fel, *fel, *brott, feil*, *feil,
    fejl*, *fejl, *brudd, *brud, awaria*, usterka*, przerwa*, porucha*, chyba*, preruseni*, halytys*, vika*, *vika, *katkos,
    hiba*, *hiba, riasztas*, szakadas*, *szakadas, ariza*, hata*, kopuk*, авария*, тревога*, обрыв*, неисправность*,
    ошибка*, аварія*, обрив*, σφαλμα*, συναγερμος*, 报警, 警报, 故障, 断线, 断偶, 報警, 警報, 異常, 断線, アラーム, 경보, 알람,
    단선, 고장`),
);
/** Limits: they name a flag where nothing but flags stands below them. */
const namesLimit = phraseTest(list('high, hi, hihi, hh, low, lo, lolo, ll, hoch, tief, haut, bas, alto, basso, bajo'));
/** What is said about alarms and is none, or stands while there is none. */
const namesOther = phraseTest(
  list(`
    limit*, sp, setpoint*, set point*, set, enable*, disable*, inhibit*, reset*, ack*, quit*, count*, counter, number, no of,
    delay*, time*, hyst*, deadband, db, mute*, silence*, horn, code*, type*, id, text*, message*, word, bits, mask, label*,
    ok, okay, healthy, normal, no alarm*, no fault*, no error*, alarm free, relay*, output*, truth, detection, predicted, prediction, score, anomaly`),
);

/** How surely a column's name is that of an alarm flag: 2 = it says alarm or fault, 1 = it says a limit, 0 = neither. */
export function saysAlarm(name: string): 0 | 1 | 2 {
  const words = flagWordsOf(name);
  if (namesOther(words)) return 0;
  return namesAlarm(words) ? 2 : namesLimit(words) ? 1 : 0;
}

/** "Z1HiAlm" is "z 1 hi alm": words as they are spoken, folded, joined by one blank. Never throws. */
export function flagWordsOf(name: string): string {
  return wordsOf(plainTag(name.trim()).replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')).join(' ');
}
