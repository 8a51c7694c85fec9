import type { MaintenanceEntry, StopEntry } from '../../model/alarm.js';
import type { MaintenanceRow, StopRow } from '../../model/event-rows.js';
import type { PlantFile } from '../../model/plant-file.js';
import type { Zone } from '../../model/zone.js';
import { list, phraseTest, wordsOf } from '../../words/fold.js';
import { alarmKind } from './alarm-kind.js';
import { zoneMatcher } from './match-zone.js';
import { isSensorReplacement, repairCause } from './repair-words.js';
import { isWashDown } from './wash-words.js';
import { severalNamed, zonesInCell } from './zones-in-cell.js';

/** Words of a stop's reason, or of the column that says whether it was planned (common practice, several languages). */
const plannedReasons = list(`
    planned, scheduled, plan, changeover, change over, format change, change of format, lunch, meal, shift end, end of shift, no order, no orders, weekend,
    holiday, preventive maintenance, pm, planned maintenance, cleaning, sanitation, wash down, washdown, start up, startup,
    warm up, meeting, trial, geplant, umrusten, umrustung, rustzeit, rusten, pause, schichtende, kein auftrag, wochenende,
    feiertag, reinigung, wartung, planifie, changement de serie, fin de poste, nettoyage, week end, pianificato, cambio formato,
    pausa, fine turno, pulizia, planificado, cambio de formato, descanso, limpieza, fin de turno, planejado, limpeza, gepland,
    omstellen, ombouw, pauze, schoonmaak, planerad, stallning, omstallning, rast, rengoring, planlagt, omstilling, rengjoring,
    vask, oppstart, planowany, przezbrojenie, czyszczenie, mittag, mittagspause, fruhstuckspause, besprechung, schulung,
    formatwechsel, formatumstellung, produktwechsel, werkzeugwechsel, changement de format, changement d outil, repas, dejeuner,
    reunion, pranzo, pausa pranzo, riunione, cambio utensile, comida, almuerzo, cambio de molde, almoco, refeicao, troca de formato,
    reuniao, lunchpauze, formaatwissel, vergadering, formatbyte, mote, lunsj, formatbytte, frokost, zmiana formatu, obiad, zebranie`);
/** People have one, or a thing has: "Tea break", "Sensor break". */
const breaks = phraseTest(list('break, breaks, przerwa'));
const brokenThings = phraseTest(
  list('web break, film break, foil break, paper break, strip break, tape break, reel break, belt break, chain break'),
);
const unplannedReasons = list(`
    unplanned, not planned, unscheduled, ungeplant, non planifie, non pianificato, no planificado, nao planejado, ongepland,
    oplanerad, ikke planlagt, uplanlagt, nieplanowany`);
/** What such a column may say as well; in a reason a 1 is the number of a zone, and "no" the beginning of "no order". */
const yes = list('yes, y, true, 1, x, ja, wahr, oui, si, sim, tak');
const no = list('no, n, false, 0, nein, non, nao, nee, nej, nei, nie');

const isPlannedReason = phraseTest(plannedReasons);
const isUnplannedReason = phraseTest(unplannedReasons);
const isSaidPlanned = phraseTest([...plannedReasons, ...yes, 'break']);
const isSaidUnplanned = phraseTest([...unplannedReasons, ...no]);

/** Lines of maintenance lists, by time, each once however many files hold it; one for each zone of a line that names several. Never throws. */
export function maintenanceEntries(
  rows: readonly MaintenanceRow[],
  zones: readonly Zone[],
  plant: PlantFile,
): MaintenanceEntry[] {
  const match = zoneMatcher(zones, plant.zones);
  const entries = withoutRepeats(rows).flatMap(({ timeMs, zone, machine, done, found }) => {
    const entry = {
      ...{ timeMs, zoneText: zone, done, found },
      cause: repairCause(done, found),
      isReplacement: isSensorReplacement(done),
      isWashDown: isWashDown(done),
    };
    const several = zonesInCell(
      zone || severalNamed(done),
      zones,
      (part) => match({ zone: part, machine, source: '', message: '' }).zone,
    );
    const one = match({ zone, machine, source: '', message: `${done} ${found}` }).zone;
    return (several.length > 0 ? several : [one]).map((index) => ({ ...entry, zone: index }));
  });
  return entries.sort((a, b) => a.timeMs - b.timeMs);
}

/** Lines of stop lists, by start, each once. A stop without an end is left out and counted. Never throws. */
export function stopEntries(
  rows: readonly StopRow[],
  zones: readonly Zone[],
  plant: PlantFile,
): { readonly stops: StopEntry[]; readonly withoutEnd: number } {
  const match = zoneMatcher(zones, plant.zones);
  const once = withoutRepeats(rows);
  const ended = once.filter(({ startMs, endMs }) => endMs > startMs);
  const stops = ended.map(({ startMs, endMs, machine, reason, planned }) => {
    const matched = match({ zone: '', machine, source: '', message: reason });
    const isZones = alarmKind(reason, matched.zone !== null) !== 'machine-stop';
    return {
      startMs,
      endMs,
      machine: matched.machine ?? (machine || null),
      zone: isZones ? matched.zone : null,
      reason,
      isPlanned: isPlanned(planned, reason),
      isWashDown: isWashDown(reason),
    };
  });
  return { stops: stops.sort((a, b) => a.startMs - b.startMs), withoutEnd: once.length - ended.length };
}

function isPlanned(planned: string, reason: string): boolean {
  const said = wordsOf(planned).join(' ');
  if (said !== '') return !isSaidUnplanned(said) && isSaidPlanned(said);
  const words = wordsOf(reason).join(' ');
  return !isUnplannedReason(words) && (isPlannedReason(words) || (breaks(words) && !isOfThing(words)));
}

function isOfThing(words: string): boolean {
  const kind = alarmKind(words, false);
  return brokenThings(words) || (kind !== 'other' && kind !== 'machine-stop');
}

function withoutRepeats<Row extends object>(rows: readonly Row[]): Row[] {
  return [...new Map(rows.map((row) => [JSON.stringify(row), row])).values()];
}
