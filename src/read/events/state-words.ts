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
      unquittiert, nicht quittiert,
      kuittaamaton, onaysiz, ikke kvittert, ikke kvitteret, okvitterad, neakceptovany, nepotvrzeno, nepotvrdene,
      nyugtazatlan, nepotvrden, неквитирована, не квитирована, не подтверждена, неквитовано, 未確認, 未确认,
      미확인,
      nepatvirtinta, neapstiprinats, kinnitamata, непотвърдена, chua xac nhan, belum dikonfirmasi, belum diakui, ยังไม่รับทราบ, غير مؤكد,
      לא אושר, לא אושרה`),
  ],
  [
    'cleared',
    list(`
      cleared, clear, recovered, return, returned, return to normal, returned to normal, rtn, rtn normal, normal
      return, nr, h nr, l nr, hh nr, ll nr, normal, inactive, off, reset, ended, end, gone, out, outgoing,
      resolved, unack rtn, ack rtn, ok, goes, went, gegangen, gehend, geht, g, kg, gq, kgq, kqg, behoben, inaktiv, aus, ende,
      disparu, disparition, fin, efface, retour, retour a la normale, inactif, rientrato, rientro, cessato, fine,
      inattivo, inactivo, despejada, despejado, normalizado, normalizada, resuelta, resuelto,
      finalizada, finalizado, desaparecida, resolu, resolue, risolto, risolta, resolvido, resolvida, retorno, inativo, encerrado, opgeheven, hersteld,
      inactief, atergang, atergatt, franslag, borte, opphevet, inaktiv, ophort, afsluttet, ustapil, skasowany,
      nieaktywny, koniec, gaat, weg, fran, slut, zanik, neaktivni, konec, odezneni, 恢复, 消失, 解除, 復帰,
      gitti, giden, silindi, temizlendi, kalkti, pasif, normale dondu, bitti, kapandi, kapali, duzeldi,
      sona erdi, poistunut, poistui, paattyi, paattynyt, ei aktiivinen, loppui, palautunut, normaali, pois,
      nollattu, ohi, gaet, vaek, frafald, gikk, gatt, utgatt, utgangen, upphord, borta, afmeldt, forbi,
      megszunt, megszunes, elmult, visszaallt, tavozott, kimeno, torolve, vege, disparut, inactiv, inactiva,
      revenit, stearsa, sters, incheiat, incheiata, rezolvat, rezolvata, normalizat, iesit, zaniknuty, zanikla,
      zanikol, odisiel, odesel, odesla, ukonceny, ukoncen, ukonceno, skoncil, skoncila, neaktivny, v norme,
      pominul, pominula, ustapilo, ustapienie, zakonczony, zakonczone, zniknal, nieaktywne, nieaktywna, powrot,
      odszedl, odsel, prenehal, preneha, neaktiven, nestao, nestanak, prestao, neaktivan, neaktivno, otisao,
      zavrsen, isnyko, dingo, neaktyvus, neaktyvi, baigesi, pazuda, neaktivs, neaktiva, beidzas, kadunud, kadus,
      mitteaktiivne, loppes, снята, снят, снято, снятие, ушла, ушел, ушло, исчезла, исчез, исчезновение, сброс,
      сброшена, сброшено, норма, возврат, в норме, неактивна, неактивен, неактивно, завершена, завершено,
      окончание, конец, устранена, устранено, пропала, зникла, зникло, знято, знята, скинуто, неактивний,
      усунено, повернення, отпадна, отпаднала, изчезна, изчистена, ανενεργος, ανενεργο, ανενεργη, ληξη, εληξε,
      αποκατασταση, αποκατασταθηκε, επαναφορα, τελος, εκκαθαριστηκε, het, ket thuc, da xoa, khoi phuc, hilang,
      selesai, pulih, nonaktif, 已恢复, 恢复正常, 已解除, 已消失, 结束, 复位, 恢復, 已恢復, 結束, 復歸, 解消,
      復旧, 回復, 正常, 終了, 해제, 해제됨, 복귀, 복구, 해소, 종료, 정상, 소멸,
      pasibaige, grizo i norma, beidzies, dzests, normals, loppenud, taastunud, korras, възстановена, приключи, нормално, binh thuong, da
      het, tro ve binh thuong, khong hoat dong, kembali normal, berakhir, tidak aktif, หาย, หายไป, ปกติ, กลับสู่ปกติ, สิ้นสุด, انتهى,
      انتهت, زال, عاد الى الطبيعي, طبيعي, غير نشط, לא פעיל, חזר לתקין, תקין, הסתיים, הסתיימה, נוקה`),
  ],
  [
    'acknowledged',
    list(`
      acknowledged, acknowledge, ack, acked, accepted, ack alm, ack active, quittiert, q, kq, acquitte, acquittement,
      riconosciuto, tacitato, reconocida, reconocido, reconhecido, bevestigd, geaccepteerd, kvitterad, kvittert,
      kvitteret, kvitterat, potwierdzony, potwierdzenie, potvrzeno, potvrzen, 确认, 確認,
      onaylandi, onayli, onay, kabul edildi, kuitattu, kuittaus, godkendt, kvittering, kvittens, bekraftad,
      nyugtazva, nyugtazott, nyugta, nyugtazas, confirmat, confirmata, recunoscut, recunoscuta, achitat,
      achitata, luat la cunostinta, potvrdeny, potvrdene, potvrdena, kvitovany, kvitovano, kvitovane,
      potwierdzone, potwierdzona, potwierdzono, potrjen, potrjeno, potvrden, potvrdeno, kvitiran, kvitirano, patvirtinta,
      patvirtintas, apstiprinats, apstiprinata, kinnitatud, квитирована, квитирован, квитировано, квитирование,
      подтверждена, подтвержден, подтверждено, подтверждение, принята, квитовано, квитована, підтверджено,
      підтверджена, потвърдена, потвърдено, αναγνωριστηκε, αναγνωρισμενος, επιβεβαιωθηκε, επιβεβαιωση,
      αναγνωριση, xac nhan, da xac nhan, dikonfirmasi, diakui, 已确认, 已確認, 確認済, 確認済み, 확인, 확인됨,
      확인완료,
      patvirtintas aliarmas, apstiprinajums, kinnitus, приета, потвърден, da duoc xac nhan, sudah dikonfirmasi, รับทราบ, รับทราบแล้ว,
      ยืนยัน, ยืนยันแล้ว, تم الاقرار, تم التاكيد, مؤكد, מאושר, אושר, אושרה, אישור`),
  ],
  [
    'active',
    list(`
      active, activated, alarm, alm, act, raised, raise, on, set, start, started, begin, came, come, comes, in,
      incoming, occurred, triggered, new, h, l, hh, ll, hi, lo, hihi, lolo, high, low, gekommen, kommend, kommt,
      k, aktiv, ein, anstehend, apparu, apparition, debut, actif, attivo, entrato, inizio, activo, activa,
      activada, ativo, inicio, actief, opgekomen, aktivt, tillslag, kommet, inntraff, aktywny, wystapil, komt, opgetreden, till, vznik, aktivni, 发生, 触发,
      報警, 发警, 発生,
      geldi, gelen, aktif, olustu, basladi, tetiklendi, acik, etkin, aktiivinen, alkoi, tuli, paalla, syntyi,
      lauennut, halytys, tulo, aktiveret, opstaet, indtruffet, kommer, kom, inntruffet, utlost, oppstatt,
      inkommen, inkommande, uppkommen, aktiverad, bejott, erkezett, fellepett, jelentkezett, beerkezo,
      kezdodott, activ, aparut, aparuta, declansat, declansata, intrat, inceput, aktivny, aktivna, aktivne,
      prisiel, prisla, vznikol, vznikla, prisel, vznikl, zacal, zacatek, aktywne, aktywna, wystapilo,
      wystapienie, pojawil sie, przyszedl, aktiven, nastal, nastop, aktivan, aktivno, nastao, nastanak, pojava,
      pojavio se, aktyvus, aktyvi, atsirado, ivyko, aktivs, aktiva, paradijas, sakas, aktiivne, tekkis, algas,
      активна, активен, активно, появилась, появился, появление, возникла, возник, возникло, возникновение,
      пришла, пришел, пришло, сработала, сработал, сработало, начало, авария, тревога, з'явилась, з'явилося,
      виникла, виникло, активний, спрацювала, спрацювало, початок, аварія, тривога, възникна, появи се,
      задействана, ενεργος, ενεργο, ενεργη, εμφανιση, εμφανιστηκε, εναρξη, συναγερμος, xuat hien, xay ra,
      kich hoat, muncul, terjadi, 激活, 报警, 产生, 触发中, 发生中, 產生, 發生, 啟動, 觸發, 警報, 発報, 発生中,
      異常, 발생, 발생중, 경보, 활성,
      aktyvuotas, suveike, radas, aktivizets, aktiveeritud, tekkinud, настъпи, активирана, phat sinh, dang hoat dong, bat dau, aktif,
      mulai, เกิดขึ้น, เกิด, แจ้งเตือน, เริ่ม, نشط, نشطة, ظهر, ظهور, بدا, بداية, פעיל, פעילה, הופיע, הופיעה, החל, החלה`),
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
const tellingWords = [
  'recovered|cleared|returned to normal|return to normal|rtn|acknowledged|acked|activated|raised|inactive|active',
  'gegangen|gekommen|quittiert|behoben|rientrato|riconosciuto|acquitté|disparu|apparu|kvitterad|kvittert|kvitteret',
  'geldi|gitti|onaylandı|poistunut|kuitattu|bejött|megszűnt|nyugtázva|apărut|dispărut|wystąpiło|ustąpiło|odešel|přišel',
  'появилась|снята|квитирована|подтверждена|исчезла|зникла|знято|квитовано',
].join('|');
const atMessageEnd = new RegExp(`(?:^\\s*|[\\s:;,([-]+)(${tellingWords})[\\s)\\]]*$`, 'iu');
const atMessageStart = new RegExp(`^\\s*[([]?\\s*(${tellingWords}|clear|alarm)\\s*[)\\]]?\\s*[\\s:;,-]+`, 'iu');
/** In capitals only: "turned on" is no state of an alarm. */
const onOffAtEnd = /[\s:;,([-]+(ON|OFF)[\s)\]]*$/u;
/** Scripts without blanks: "ゾーン1断線 復旧", "温区1断线恢复". */
const atUnbrokenEnd =
  /[\s:：;,、([（-]*(発生|復旧|回復|解除|确认|確認|恢复|恢復|消失|发生|發生|발생|해제|복귀)[\s)\]）]*$/u;

/**
 * Takes the state out of a message, so that the rows of one alarm carry one text.
 *
 * @param isStateApart Whether the row says its state elsewhere: "Heater OFF" is then what the alarm is about.
 * @returns The message without the state word, and the state; null where the message says none.
 */
export function splitMessageState(
  message: string,
  isStateApart = false,
): { readonly text: string; readonly state: EventState | null } {
  const onOff = isStateApart ? [] : [onOffAtEnd];
  for (const pattern of [atMessageEnd, ...onOff, atMessageStart, atUnbrokenEnd]) {
    const match = pattern.exec(message);
    const state = match ? eventState(match[1]!) : null;
    const text = message.replace(pattern, '').trim();
    if (state && text) return { text, state };
  }
  return { text: message.trim(), state: null };
}
