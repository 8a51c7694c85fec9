import { list, wordsOf } from '../../words/fold.js';

/** What a row of an alarm log says has happened to the alarm. */
export type EventState = 'active' | 'acknowledged' | 'cleared';

/**
 * Words for the three things that happen to an alarm, whole words, most telling first: "inactive" and
 * "not acknowledged" must be met before "active" and "acknowledged". Source: common practice; "NR" (normal
 * return) beside a limit letter as in the Tennessee Eastman alarm lists; OPC Alarms & Events state names.
 */
const stateWords: readonly (readonly [EventState, readonly string[]])[] = [
  [
    'active',
    list(`
      unack, unacknowledged, not acknowledged, unack alm, unack active, act unack, active unacknowledged,
      unquittiert, nicht quittiert`),
  ],
  [
    'cleared',
    list(`
      cleared, clear, recovered, return, returned, return to normal, returned to normal, rtn, rtn normal, normal
      return, nr, h nr, l nr, hh nr, ll nr, normal, inactive, off, reset, ended, end, gone, out, outgoing,
      resolved, unack rtn, ack rtn, ok, goes, went, gegangen, gehend, geht, g, behoben, inaktiv, aus, ende,
      disparu, disparition, fin, efface, retour, retour a la normale, inactif, rientrato, rientro, cessato, fine,
      inattivo, inactivo, despejada, despejado, normalizado, normalizada, resuelta, resuelto,
      finalizada, finalizado, desaparecida, resolu, resolue, risolto, risolta, resolvido, resolvida, retorno, inativo, encerrado, opgeheven, hersteld,
      inactief, atergang, atergatt, franslag, borte, opphevet, inaktiv, ophort, afsluttet, ustapil, skasowany,
      nieaktywny, koniec, gaat, weg, fran, slut, zanik, neaktivni, konec, odezneni, 恢复, 消失, 解除, 復帰`),
  ],
  [
    'acknowledged',
    list(`
      acknowledged, acknowledge, ack, acked, accepted, ack alm, ack active, quittiert, q, acquitte, acquittement,
      riconosciuto, tacitato, reconocida, reconocido, reconhecido, bevestigd, geaccepteerd, kvitterad, kvittert,
      kvitteret, kvitterat, potwierdzony, potwierdzenie, potvrzeno, potvrzen, 确认, 確認`),
  ],
  [
    'active',
    list(`
      active, activated, alarm, alm, act, raised, raise, on, set, start, started, begin, came, come, comes, in,
      incoming, occurred, triggered, new, h, l, hh, ll, hi, lo, hihi, lolo, high, low, gekommen, kommend, kommt,
      k, aktiv, ein, anstehend, apparu, apparition, debut, actif, attivo, entrato, inizio, activo, activa,
      activada, ativo, inicio, actief, opgekomen, aktivt, tillslag, kommet, inntraff, aktywny, wystapil, komt, opgetreden, till, vznik, aktivni, 发生, 触发,
      報警, 发警, 発生`),
  ],
];

const stateOf = new Map<string, EventState>();
for (const [state, phrases] of stateWords) {
  for (const phrase of phrases) {
    const key = wordsOf(phrase).join(' ');
    if (!stateOf.has(key)) stateOf.set(key, state);
  }
}

/** Numbers and signs that stand for come, acknowledged and gone in state columns; common practice. */
const stateSigns: Readonly<Record<string, EventState>> = {
  '1': 'active',
  '0': 'cleared',
  '+': 'active',
  '-': 'cleared',
  true: 'active',
  false: 'cleared',
};

/**
 * What a state cell says.
 *
 * @returns null for words that are not in the table. Never throws.
 */
export function eventState(cell: string): EventState | null {
  const trimmed = cell.trim();
  return stateSigns[trimmed.toLowerCase()] ?? stateOf.get(wordsOf(trimmed).join(' ')) ?? null;
}

/** Words so telling that they say the state at either end of a message: "FLW LOW ALM RECOVERED", "Quittiert: Zone 3". */
const atMessageEnd =
  /(?:^\s*|[\s:;,([-]+)(recovered|cleared|returned to normal|return to normal|rtn|acknowledged|acked|activated|raised|inactive|active|gegangen|gekommen|quittiert|behoben|rientrato|riconosciuto|acquitté|disparu|apparu|kvitterad|kvittert)[\s)\]]*$/iu;
const atMessageStart =
  /^\s*[([]?\s*(recovered|cleared|returned to normal|rtn|acknowledged|acked|activated|raised|inactive|active|gegangen|gekommen|quittiert|rientrato|acquitté|disparu|apparu|kvitterad|kvittert)\s*[)\]]?\s*[\s:;,-]+/iu;

/**
 * Takes the state out of a message, so that the rows of one alarm carry one text.
 *
 * @returns The message without the state word, and the state; null where the message says none.
 */
export function splitMessageState(message: string): { readonly text: string; readonly state: EventState | null } {
  for (const pattern of [atMessageEnd, atMessageStart]) {
    const match = pattern.exec(message);
    const state = match ? eventState(match[1]!) : null;
    const text = message.replace(pattern, '').trim();
    if (state && text) return { text, state };
  }
  return { text: message.trim(), state: null };
}
