import type { AlarmKind } from '../../model/alarm.js';
import type { AlarmLabel } from '../../model/event-rows.js';
import type { PlantFile } from '../../model/plant-file.js';
import type { Zone } from '../../model/zone.js';
import { list, phraseTest, wordsOf } from '../../words/fold.js';
import { alarmKind, alarmKinds } from './alarm-kind.js';
import { isOperatorAction } from './operator-words.js';
import { zoneMatcher, type ZoneMatch } from './match-zone.js';

/** What an alarm is, beside its times. */
export interface LabelMeaning {
  readonly source: string;
  readonly message: string;
  readonly kind: AlarmKind;
  readonly zone: number | null;
  readonly machine: string | null;
  readonly priority: string | null;
  readonly isAmbiguousZone: boolean;
  /** True where it tells what somebody did, and no alarm. */
  readonly isAction: boolean;
}

/** Sources that stand for the machine as a whole; common practice. */
const wholeMachine = phraseTest(
  list(`
      machine, maschine, line, system, plc, sps, anlage, general, maskin, macchina, maquina, ligne, linea, lijn,
      maszyna, control*, hmi`),
);
/** Words that name a quantity other than temperature: a "low" of theirs is no temperature alarm. */
const otherQuantity = phraseTest(
  list(`
      flow, flw, level, lvl, lev, pressure, press, prs, conc, valve, vlv, pos, speed, vacuum, air, torque, weight,
      durchfluss, druck, fullstand, drehzahl, debit, pression, niveau, portata, pressione, livello, caudal,
      presion, nivel`),
);

/**
 * Gives each label of the alarm logs its meaning: zone, machine, kind.
 *
 * @returns A function of a label. Rules of plant.yaml (`alarmTexts`) go before the word table. It never throws.
 */
export function labelReader(zones: readonly Zone[], plant: PlantFile): (label: AlarmLabel) => LabelMeaning {
  const match = zoneMatcher(zones, plant.zones);
  const rules = plantRules(plant, match);
  return (label) => {
    const { source, message } = zoneFirst(sourceAndMessage(label), label, match);
    const found = match({ zone: label.zone, machine: label.machine, source, message });
    const rule = rules.find(({ applies }) => applies(label, message));
    const zone = rule?.zone ?? found.zone;
    // "Zone 4 high: 231.4 > 225": what stands behind the colon is no word.
    const words = /\p{L}/u.test(message) ? message : source;
    const isOnZone = zone !== null && !otherQuantity(wordsOf(words).join(' '));
    const kind = rule?.kind ?? alarmKind(words, isOnZone);
    return {
      source,
      message: message === '' ? label.code : message,
      kind,
      zone,
      machine: zone === null ? (found.machine ?? writtenMachine(label)) : zones[zone]!.machine,
      priority: label.priority === '' ? null : label.priority,
      isAmbiguousZone: zone === null && found.isAmbiguous,
      isAction: !rule && kind === 'other' && isOperatorAction(`${source} ${message}`),
    };
  };
}

interface PlantRule {
  readonly applies: (label: AlarmLabel, message: string) => boolean;
  readonly kind: AlarmKind;
  readonly zone: number | null;
}

function plantRules(
  plant: PlantFile,
  match: (clues: { zone: string; machine: string; source: string; message: string }) => ZoneMatch,
): PlantRule[] {
  return (plant.alarmTexts ?? []).map(({ text, kind, zone }) => {
    const wanted = wordsOf(text).join(' ');
    return {
      applies: (label, message) =>
        wordsOf(label.code).join(' ') === wanted || ` ${wordsOf(message).join(' ')} `.includes(` ${wanted} `),
      kind: alarmKinds.find((known) => known === kind) ?? alarmKind(kind, true),
      zone: zone === undefined ? null : match({ zone, machine: '', source: '', message: '' }).zone,
    };
  });
}

/** "UpperSeal_R: PV out of range" without a source column is source and message in one. */
function sourceAndMessage({ source, zone, machine, message }: AlarmLabel): Split {
  const written = source || zone || machine;
  if (written) return { source: written, message };
  const match = /^([^:]{1,40}?)\s*(?::|\s[-–]\s)\s*(\S.*)$/u.exec(message);
  return match ? { source: match[1]!.trim(), message: match[2]! } : { source: '', message };
}

type Split = { readonly source: string; readonly message: string };

/** Some write the zone last, "sensor open circuit - Upper jaw L": the part that names a zone is the source. */
function zoneFirst(
  split: Split,
  label: AlarmLabel,
  match: (clues: { zone: string; machine: string; source: string; message: string }) => ZoneMatch,
): Split {
  const isWritten = (label.source || label.zone || label.machine) !== '';
  if (isWritten || split.source === '') return split;
  const zoneIn = (source: string): number | null => match({ zone: '', machine: '', source, message: '' }).zone;
  const isLast = zoneIn(split.source) === null && zoneIn(split.message) !== null;
  return isLast ? { source: split.message, message: split.source } : split;
}

/** A machine no temperature log knows keeps its name; "Machine" is no name. */
function writtenMachine({ machine }: AlarmLabel): string | null {
  return machine === '' || wholeMachine(wordsOf(machine).join(' ')) ? null : machine;
}
