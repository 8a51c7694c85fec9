import { list, phraseTest, wordsOf } from '../../words/fold.js';
import type { ColumnLook } from './cell-looks.js';
import type { EventColumns, EventFileKind } from './event-table.js';

type Header = readonly string[];

/** A column is what most of its sample cells are; common practice. */
const MOST = 0.6;

/**
 * What a table of events lists, from which columns it has.
 *
 * @param value Its column of values; absent = none.
 * @param taken Columns whose role is known.
 * @param called What something outside the table says that it lists; null = nothing.
 * @returns null where it is none of events. Never throws.
 */
export function kindOf(
  columns: EventColumns,
  header: Header,
  looks: readonly ColumnLook[],
  value: number | undefined,
  taken: ReadonlySet<number>,
  called: EventFileKind | null,
): EventFileKind | null {
  const hasSpan = columns.end !== undefined || columns.duration !== undefined;
  if (called === 'stops' && hasSpan && (columns.reason ?? columns.found) !== undefined) return 'stops';
  if (columns.done !== undefined) return 'maintenance';
  // What has a begin and an end, and a cause but no work, is a stop.
  if (columns.found !== undefined && columns.state === undefined) return hasSpan ? 'stops' : 'maintenance';
  const numberColumns = looks.filter((look, c) => !taken.has(c) && look.number >= 0.9 && look.distinct > 2).length;
  if (numberColumns > 2) return null; // a wide log with a word column in it
  const isRemarked = columns.message !== undefined && saysRemark(wordsOf(header[columns.message] ?? '').join(' '));
  if (hasSpan && columns.reason !== undefined && (columns.message === undefined || isRemarked)) return 'stops';
  if (columns.reason !== undefined && hasSpan && namesStops(header)) return 'stops';
  if (columns.state !== undefined && columns.message === undefined)
    return namesSomething(columns, looks) ? 'alarm' : null;
  if (columns.message === undefined) return null;
  if (columns.state !== undefined) return 'alarm';
  if (hasSpan) return namesStops(header) || (called === 'stops' && !header.some(saysAlarms)) ? 'stops' : 'alarm';
  if (value !== undefined || numberColumns > 0) return null; // readings with a tag or a remark beside them
  const isOfDays = columns.start.length === 1 && looks[columns.start[0]]!.dateOnly >= MOST;
  // Alarms have a time of day; what people note by the day is what they did.
  if (isOfDays && called !== 'alarm' && !header.some((name) => saysAlarms(name))) return 'maintenance';
  if (called === 'maintenance' && !header.some(saysAlarms)) return 'maintenance';
  return called === 'alarm' || header.some((name) => namesAlarms(wordsOf(name).join(' '))) ? 'alarm' : null;
}

/** Without a message, something must still say whose state it is: a code, or a source in words. */
function namesSomething({ code, source, zone, machine }: EventColumns, looks: readonly ColumnLook[]): boolean {
  return (
    code !== undefined || [source, zone, machine].some((column) => column !== undefined && looks[column]!.words >= MOST)
  );
}

const stopWords = phraseTest(
  list(`
      stop, stop reason, stoppage, downtime, stillstand*, stopp*, arret*, fermo, fermata, paro, parada, stilstand,
      postoj, przestoj, przestoje, paradas, paros, fermate, fermi, arrets, stilstanden, postoje, stops`),
);
const namesAlarms = phraseTest(
  list(`
      alarm*, message, event, fault, error, meldung, meldetext, storung, fehler*, ereignis, alarme, defaut,
      allarme, messaggio, evento, alarma, mensaje, mensagem, melding, storing, larm*, meddelande, hendelse,
      haendelse, komunikat`),
);

/** Names of the column in which people say more. From memory. */
const saysRemark = phraseTest(
  list(`comment*, remark*, note, notes, bemerkung*, kommentar*, anmerkung*, remarque*, commentaire*, nota, notas, comentario*,
    observacion*, observac*, osservazion*, commento, commenti, opmerking*, uwaga, uwagi, merknad*, anmarkning*, poznamka`),
);
/** Words that only a list of alarms has above its texts. */
const saysAlarmOnly = phraseTest(list('alarm*, *meldung, meldetext, allarme, alarma, larm*, severity, priority'));

function saysAlarms(name: string): boolean {
  return saysAlarmOnly(wordsOf(name).join(' '));
}

function namesStops(header: Header): boolean {
  return header.some((name) => {
    const words = wordsOf(name).join(' ');
    return stopWords(words) && words !== 'stop' && words !== 'stop time';
  });
}
