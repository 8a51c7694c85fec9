import { list } from '../../words/fold.js';

/** What a column of an alarm log, maintenance list or stop list can hold. */
export type EventRole =
  | 'start'
  | 'end'
  | 'duration'
  | 'acknowledged'
  | 'time'
  | 'state'
  | 'priority'
  | 'machine'
  | 'zone'
  | 'source'
  | 'code'
  | 'done'
  | 'found'
  | 'reason'
  | 'planned'
  | 'value'
  | 'message';

/**
 * Header words by role, most telling role first: the first role with a word in the header takes the column.
 * Languages: English, German, French, Italian, Spanish, Portuguese, Dutch, Swedish, Norwegian, Danish, Polish, Czech.
 * Source: common practice. A * stands for more letters.
 */
export const columnWords: readonly (readonly [EventRole, readonly string[]])[] = [
  [
    'acknowledged',
    list(`
      ack time, time acknowledged, acknowledged at, acknowledged, ack, quittiert*, quittierzeit, acquitte*,
      riconosciut*, reconocid*, kvitter*, potwierdzon*, potvrzen*`),
  ],
  [
    'duration',
    list(`
      duration, dauer, duree, durata, duracion, duracao, duur, varaktighet, varighet, varighed, czas trwania, trvani, doba trvani,
      minutes, length, downtime min, stillstandszeit, *dauer`),
  ],
  [
    'end',
    list(`
      end, end time, ended, stop time, off time, time off, cleared, cleared at, return time, returned, to, until,
      ende, endzeit, gegangen, gehend, bis, fin, fine, final, termino, fim, einde, slut, sluttid, koniec, konec, restart,
      inactive time, time out`),
  ],
  [
    'start',
    list(`
      start, start time, started, begin, begin*, on time, time on, raised, raised at, activation, activation time,
      activated, from, active time, von, startzeit, gekommen, kommend, debut, inizio, inicio, aanvang, starttid,
      poczatek, zacatek, vznik, time in, occurred, occurrence`),
  ],
  [
    'done',
    list(`
      done, what was done, work done, work, action, action taken, actions, repair, job, task, measure,
      durchgefuhrt*, massnahme*, arbeit*, tatigkeit, reparatur, travaux, intervention, intervento, lavoro, azione,
      trabajo, accion, servico, acao, werkzaamheden, actie, atgard, tiltak, utfort, handling, udfort, czynnosc,
      wykonano, erledigt*, ausgefuhrt*, travail, effectue, eseguito, realizado, uitgevoerd*`),
  ],
  [
    'found',
    list(`
      found, what was found, finding, findings, root cause, fault found, result, diagnosis, failure cause, failure
      mode, befund, fehlerursache, feststellung, constat, cause trouvee, diagnostic, riscontro, causa trovata,
      hallazgo, diagnostico, bevinding, fynd, funn, fund, arsak, stwierdzono, usterka, gefunden, festgestellt, trouve,
      constate, trovato, encontrado, constatado, gevonden, vastgesteld, hittat, funnet, fundet, konstateret`),
  ],
  [
    'planned',
    list(`
      planned, scheduled, planned unplanned, geplant, planifie, pianificato, planificado, planejado, gepland,
      planerad, planlagt, planowany`),
  ],
  [
    'reason',
    list(`
      reason, stop reason, downtime reason, stop cause, stoppage, cause, category, grund, stillstandsgrund,
      stoppgrund, ursache, motif, raison, motivo, causa, causale, razon, reden, oorzaak, orsak, arsak stopp,
      stoppasrsak, stoppasarsak, przyczyna`),
  ],
  [
    'state',
    list(`
      state, alarm state, event type, status, action state, transition, zustand, etat, stato, estado, toestand,
      tillstand, tilstand, stan, stav, active, is active, type, typ, tipo, event state, change,
      event, ereignis, evenement, evento, hendelse, haendelse, handelse, on off, active inactive`),
  ],
  [
    'priority',
    list(`
      priority, prio, severity, alarm class, class, level, prioritat, klasse, alarmklasse, priorite, gravite,
      priorita, dulezitost, prioridad, prioridade, prioriteit, prioritet, priorytet, urgency`),
  ],
  [
    'code',
    list(`
      code, alarm code, alarm no, alarm number, alarm id, error code, fault code, nr, nummer, alarmnummer,
      fehlercode, meldenummer, numero, codice, codigo, kod, kode, event id, id, no`),
  ],
  [
    'zone',
    list(`
      zone, zones, heater, heating zone, heat zone, sensor, loop, heizzone, regelzone, zona, zon, sone, strefa,
      channel, kanal, position`),
  ],
  [
    'machine',
    list(`
      machine, line, equipment, asset, unit, maschine, anlage, linie, ligne, macchina, linea, maquina, linha,
      lijn, maskin, linje, maszyna, linia, press, work centre, work center, station, area`),
  ],
  [
    'source',
    list(`
      source, tag, tag name, tagname, object, point, item, name, device, block, variable, quelle, ort, messstelle,
      origine, repere, origen, origem, bron, kalla, kilde, zrodlo, zdroj, where, location, module`),
  ],
  [
    'value',
    list(`
      value, alarm value, limit, wert, istwert, grenzwert, valeur, valore, valor, waarde, varde, verdi, vaerdi,
      wartosc, setpoint, threshold`),
  ],
  [
    'message',
    list(`
      message, alarm, alarm text, alarm message, alarm description, description, event, text, condition, fault,
      error, comment, meldung, meldetext, alarmtext, storung, fehler, fehlertext, beschreibung, ereignis, message
      d alarme, alarme, defaut, libelle, messaggio, allarme, descrizione, evento, mensaje, alarma, descripcion,
      mensagem, descricao, melding, storing, omschrijving, meddelande, larm, larmtext, beskrivning, alarmtekst,
      beskrivelse, hendelse, haendelse, komunikat, opis, hlaseni, zprava, popis, porucha, note, notes, what`),
  ],
  [
    'time',
    list(`
      time, timestamp, time stamp, date, datetime, date time, when, day, event time, zeit, zeitpunkt, zeitstempel,
      datum, uhrzeit, heure, horodatage, ora, data, data ora, fecha, hora, fecha hora, tijd, tijdstip, tid,
      tidpunkt, tidspunkt, dato, dato tid, czas, data godzina, cas, datum a cas, clock`),
  ],
];
