import type { MaintenanceEntry } from '../../model/alarm.js';
import { list, phraseTest, wordsOf } from '../../words/fold.js';

type RepairCause = NonNullable<MaintenanceEntry['cause']>;

/**
 * Words of maintenance lists for what was wrong, the narrower meaning first; the first line that holds a phrase
 * decides. Languages as in alarm-words.ts. Source: common practice.
 */
const repairCauseWords: readonly (readonly [RepairCause, readonly string[]])[] = [
  [
    'none',
    list(`no fault found, nothing found, no fault, nff, ok on test, tested ok, checked ok, all ok, nothing wrong, no
      problem found, false alarm, kein fehler*, nichts gefunden, in ordnung, rien trouve, ras, rien a signaler,
      nessun guasto, nulla trovato, nada encontrado, sin fallo, sem defeito, geen fout*, niets gevonden, inget fel,
      inga fel, ingen feil, ingenting funnet, ingen fejl, bez usterki, ei vikaa`),
  ],
  [
    'input',
    list(`input card, input module, ai card, ai module, analog input, analogue input, io card, i o card, io module, i o
      module, io board, i o board, tc
      card, rtd card, thermocouple card, card, module replaced, controller replaced, temperature controller, controller
      input, reference junction, cold junction, eingangskarte, eingangsmodul, analogkarte, regler getauscht, regler
      defekt, eingangsbaugruppe, karte, carte d entree, carte entree, regulateur, scheda ingressi, scheda analogica,
      scheda, regolatore, tarjeta de entrada, tarjeta, regulador, placa de entrada, cartao de entrada, ingangskaart,
      regelaar, ingangskort, ingangkort, inngangskort, indgangskort, regulator, karta wejsc*, modul wejsc*`),
  ],
  // An element that was measured open is the finding, whatever connector or terminal it was measured at.
  ['heater', list('heating element open, heating element broken, heating element failed')],
  ['sensor', list('element open, open element, element broken, broken element, element failed')],
  [
    'wiring',
    list(`wiring, wire, wires, cable, cables, lead, leads, terminal*, connector*, connection*, plug, plugs, socket, crimp*,
      splice*, joint, loose, corroded, corrosion, screw terminal, cable chain, drag chain, junction box, conduit, chafed,
      pinched, wet, moisture, insulation, kabel*, leitung*, draht*, klemme*, stecker*, steckverbind*, lose, locker*,
      korrodiert, verdrahtung, schleppkette, cable, cablage, fil, fils, borne*, connecteur*, fiche, desserre*, oxyde*,
      cavo, cavi, filo, fili, morsett*, connettor*, allentat*, ossidat*, cablaggio, hilo*, cableado, borne*, bornera,
      conector*, flojo, floja, suelto, suelta, fio, fios, cabo, cabos, conexao, solto, frouxo, draad*, bedrading,
      aansluit*, klem*, stekker*, los, sladd*, ledning*, plint*, kontakt*, glapp*, los kontakt, klemme*, rekkeklemme*,
      plugg*, los, lost, stik, klemraekke*, przewod*, zacisk*, zlacze, wtyczk*, luzn*, kaapeli*, johdin, liitin`),
  ],
  [
    'heater',
    list(`heater, heaters, heating element, heater band, cartridge, cartridge heater, element replaced, ssr, solid state
      relay, contactor, relay, thyristor, fuse, fuses, heat element, heizung*, heizelement*, heizpatrone*, heizband*,
      schutz, relais, halbleiterrelais, sicherung*, thyristorsteller, resistance chauffante, cartouche, collier chauffant,
      contacteur, relais statique, fusible, resistenza, resistenze, cartuccia, teleruttore, contattore, rele, fusibile,
      resistencia, resistencias, cartucho, calefactor*, contactor, fusible, aquecedor, fusivel, verwarming*,
      verwarmingselement*, zekering, varmare, varmeelement*, varmepatron*, sakring*, sikring*, kontaktor, rele, grzalk*,
      stycznik, przekaznik, bezpiecznik, vastus, sulake`),
  ],
  [
    'sensor',
    list(`sensor*, probe*, thermocouple*, rtd, rtds, pt 100, pt 1000, tc, thermoelement*, element open, element, fuhler*,
      fuehler*, temperaturfuhler*, thermoelement*, geber, sonde*, capteur*, thermocouple*, sonda*, sensore, sensori,
      termocoppia, termoresistenza, termopar*, termorresistencia, sensores, voeler*, thermokoppel*, givare*, termoelement*,
      foler*, temperaturfoler*, czujnik*, termopara, anturi*`),
  ],
  [
    'recording',
    list(`logger, historian, recorder, data collection, tag mapping, opc, server, datalogger, aufzeichnung, schreiber,
      enregistreur, registratore, registrador, registrator, loggning, logging`),
  ],
];

const replacedWords = phraseTest(
  list(`replaced, replace, replacement, changed, change, new, swapped, exchanged, renewed, fitted new, installed new,
    getauscht, ausgetauscht, ersetzt, gewechselt, erneuert, neu, neuer, neue, neues, austausch, remplace, remplacee,
    remplacement, change, changee, neuf, neuve, sostituito, sostituita, sostituzione, cambiato, cambiata, nuovo, nuova,
    reemplazado, reemplazada, reemplazo, sustituido, sustituida, cambiado, cambiada, cambio, substituida, trocada, nuevo, nueva, substituido, trocado, troca, novo, nova,
    vervangen, nieuw, nieuwe, bytt, bytte, byttet, utbytt, ny, nytt, nye, skiftet, udskiftet, skift, ny, wymieniono,
    wymiana, wymieniony, wymieniona, nowy, nowa, vaihdettu, uusi`),
);

/** "i. O." is "in Ordnung"; "I/O card" is a thing. */
const inOrder =
  /(?:^| )i o(?= |$)(?! (?:cards?|modul|modules?|boards?|rack|points?|channels?|inputs?|karte|baugruppe))/u;

const causeTests = repairCauseWords.map(([cause, phrases]) => ({ cause, holds: phraseTest(phrases) }));

/**
 * What was put right, from the words of a maintenance list. What was found counts before what was done: "replaced
 * sensor" with "terminal loose" is wiring.
 *
 * @returns null where the words tell nothing. Never throws.
 */
export function repairCause(done: string, found: string): MaintenanceEntry['cause'] {
  for (const text of [found, done]) {
    const words = wordsOf(text).join(' ');
    if (inOrder.test(words)) return 'none';
    const cause = causeTests.find(({ holds }) => holds(words))?.cause;
    if (cause) return cause;
  }
  return null;
}

/** True when the work put in a new sensor (not a new heater, card or cable). */
export function isSensorReplacement(done: string): boolean {
  const words = wordsOf(done).join(' ');
  const part = causeTests.find(({ cause, holds }) => cause !== 'none' && holds(words))?.cause;
  return replacedWords(words) && (part === 'sensor' || part === undefined);
}
