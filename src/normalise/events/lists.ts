import type { MaintenanceEntry, StopEntry } from '../../model/alarm.js';
import type { MaintenanceRow, StopRow } from '../../model/event-rows.js';
import type { PlantFile } from '../../model/plant-file.js';
import type { Zone } from '../../model/zone.js';
import { list, phraseTest, wordsOf } from '../../words/fold.js';
import { zoneMatcher } from './match-zone.js';
import { isSensorReplacement, repairCause } from './repair-words.js';
import { isWashDown } from './wash-words.js';

const plannedWords = phraseTest(
  list(`planned, scheduled, plan, yes, y, true, 1, x, changeover, change over, break, lunch, meal, shift end, end of shift,
    no order, no orders, weekend, holiday, preventive maintenance, pm, planned maintenance, cleaning, sanitation, wash down,
    washdown, start up, startup, warm up, meeting, trial, geplant, ja, wahr, umrusten, umrustung, rustzeit, rusten,
    pause, schichtende, kein auftrag, wochenende, feiertag, reinigung, wartung, planifie, oui, changement de serie, pause,
    fin de poste, nettoyage, week end, pianificato, si, cambio formato, pausa, fine turno, pulizia, planificado, cambio de
    formato, descanso, limpieza, fin de turno, planejado, sim, limpeza, gepland, omstellen, ombouw, pauze, schoonmaak,
    planerad, stallning, omstallning, rast, rengoring, planlagt, omstilling, rengjoring, vask, oppstart, planowany, tak,
    przezbrojenie, przerwa, czyszczenie`),
);
const unplannedWords = phraseTest(
  list(`unplanned, not planned, unscheduled, no, n, false, 0, ungeplant, nein, non planifie, non, non pianificato, no
    planificado, nao planejado, nao, ongepland, nee, oplanerad, nej, ikke planlagt, uplanlagt, nei, nieplanowany, nie`),
);

/** Lines of maintenance lists, by time, each once however many files hold it. Never throws. */
export function maintenanceEntries(
  rows: readonly MaintenanceRow[],
  zones: readonly Zone[],
  plant: PlantFile,
): MaintenanceEntry[] {
  const match = zoneMatcher(zones, plant.zones);
  const entries = withoutRepeats(rows).map(({ timeMs, zone, machine, done, found }) => ({
    timeMs,
    zone: match({ zone, machine, source: '', message: `${done} ${found}` }).zone,
    zoneText: zone,
    done,
    found,
    cause: repairCause(done, found),
    isReplacement: isSensorReplacement(done),
    isWashDown: isWashDown(done),
  }));
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
  const stops = ended.map(({ startMs, endMs, machine, reason, planned }) => ({
    startMs,
    endMs,
    machine: match({ zone: '', machine, source: '', message: reason }).machine ?? (machine || null),
    reason,
    isPlanned: isPlanned(planned, reason),
    isWashDown: isWashDown(reason),
  }));
  return { stops: stops.sort((a, b) => a.startMs - b.startMs), withoutEnd: once.length - ended.length };
}

function isPlanned(planned: string, reason: string): boolean {
  const words = wordsOf(planned === '' ? reason : planned).join(' ');
  return !unplannedWords(words) && plannedWords(words);
}

function withoutRepeats<Row extends object>(rows: readonly Row[]): Row[] {
  return [...new Map(rows.map((row) => [JSON.stringify(row), row])).values()];
}
