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
 * Languages: English, German, French, Italian, Spanish, Portuguese, Dutch, Swedish, Norwegian, Danish, Polish, Czech;
 * then Turkish, Finnish, the Nordic ones, Hungarian, Romanian, Slovak, Slovene, Croatian, Baltic, Cyrillic, Greek, Vietnamese,
 * Indonesian, Chinese, Japanese, Korean; last those of Lithuanian, Latvian, Estonian, Bulgarian, Vietnamese, Indonesian, Thai,
 * Arabic and Hebrew that were added from memory.
 * Source: common practice. A * stands for more letters.
 */
export const columnWords: readonly (readonly [EventRole, readonly string[]])[] = [
  [
    'acknowledged',
    list(`
      ack time, time acknowledged, acknowledged at, acknowledged, ack, quittiert*, quittierzeit, acquitte*,
      riconosciut*, reconocid*, kvitter*, potwierdzon*, potvrzen*,
      kvittert, kvitteret, kvitterad, kvitteringstid, kuitattu, kuittausaika, onay zamani, onaylandi, onay,
      nyugtazva, nyugtazas ideje, confirmat, ora confirmarii, potvrdene, potvrzeno, kvitovane, potrjeno,
      potvrdeno, potwierdzono, квитирование, время квитирования, квитировано, подтверждение, подтверждено,
      підтверджено, час квитування, потвърдено, αναγνωριση, επιβεβαιωση, ωρα αναγνωρισης, xac nhan, 确认时间,
      確認時間, 確認時刻, 確認日時, 确认, 確認, 확인시간, 확인시각, 확인,
      patvirtinta, patvirtinimo laikas, apstiprinats, apstiprinasanas laiks, kinnitatud, kinnitamise aeg, час на потвърждение,
      thoi gian xac nhan, waktu konfirmasi, dikonfirmasi, เวลารับทราบ, รับทราบ, وقت الاقرار, זמן אישור, אושר`),
  ],
  [
    'duration',
    list(`
      duration, dauer, duree, durata, duracion, duracao, duur, varaktighet, varighet, varighed, czas trwania, trvani, doba trvani,
      minutes, length, downtime min, stillstandszeit, *dauer, minuten, minuti, minutos, minuter, minutter, minutten, minuty,
      min, mins, hours, std, stunden, heures, horas, uren, timmar, godziny, duree arret, tempo de parada, stilstandtijd, stopptid, czas postoju, tempo fermo,
      sure, suresi, kesto, idotartam, trvanie, doba trvania, trajanje, trukme, ilgums, kestus, длительность,
      продолжительность, тривалість, продължителност, διαρκεια, thoi luong, durasi, 持续时间, 時長, 时长,
      持續時間, 継続時間, 時間長, 지속시간,
      продължителност, thoi gian keo dai, lama, ระยะเวลา, المدة, مدة, משך, משך זמן`),
  ],
  [
    'end',
    list(`
      end, end time, ended, stop time, off time, time off, cleared, cleared at, return time, returned, to, until,
      ende, endzeit, gegangen, gehend, bis, fin, fine, final, termino, fim, einde, slut, sluttid, koniec, konec, restart,
      inactive time, disparition, desaparicion, scomparsa, time out, off, gone, gone time, gone date, went,
      bitis, bitis zamani, gidis, bitis saati, loppu, paattyi, loppuaika, poistui, sluttidspunkt, gaet, frafald,
      sluttdato, ferdig, vege, megszunes, megszunt, sfarsit, ora sfarsit, disparut, ukoncenie, ukonceni, zanik,
      zakljucek, kraj, prestanak, pabaiga, beigas, lopp, конец, окончание, время окончания, снятие, кінець,
      завершення, край, ληξη, τελος, ket thuc, selesai, 结束时间, 结束, 恢复时间, 解除时间, 結束時間, 恢復時間,
      復旧時刻, 復旧日時, 解除時刻, 終了時刻, 終了, 종료시간, 해제시간, 복귀시간, 종료,
      pabaigos laikas, beigu laiks, lopu aeg, lopp, край на, thoi gian ket thuc, waktu selesai, berakhir, เวลาสิ้นสุด, สิ้นสุด, وقت
      الانتهاء, النهاية, זמן סיום, סיום`),
  ],
  [
    'start',
    list(`
      start, start time, started, begin, begin*, on time, time on, raised, raised at, activation, activation time,
      activated, from, active time, von, startzeit, gekommen, kommend, debut, inizio, inicio, aanvang, starttid,
      poczatek, zacatek, vznik, apparition, aparicion, comparsa, time in, occurred, occurrence, on, come, come time, come date, came,
      baslangic, baslangic zamani, gelis, baslangic saati, alku, alkoi, alkuaika, starttidspunkt, opstaet,
      oppstatt, indtruffet, kezdete, kezdet, fellepes, inceput, ora inceput, aparut, zaciatok, zacetek,
      nastanak, pocetak, pradzia, sakums, algus, начало, время начала, появление, возникновение, початок,
      виникнення, начало на, εναρξη, εμφανιση, bat dau, mulai, 开始时间, 发生时间, 报警时间, 開始時間, 發生時間,
      発生時刻, 発生日時, 開始時刻, 発生, 発生時間, 발생시간, 발생시각, 시작시간, 발생일시,
      pradzios laikas, atsirado, sakuma laiks, alguse aeg, начален час, възникване, thoi gian bat dau, waktu mulai, เวลาเริ่ม,
      เริ่ม, وقت البدء, البداية, זמן התחלה, התחלה`),
  ],
  [
    'done',
    list(`
      done, what was done, work done, work, action, action taken, actions, repair, job, task, measure,
      durchgefuhrt*, massnahme*, arbeit*, tatigkeit, reparatur, travaux, intervention, intervento, lavoro, azione,
      trabajo, accion, servico, acao, werkzaamheden, actie, atgard, tiltak, utfort, handling, udfort, czynnosc,
      wykonano, erledigt*, ausgefuhrt*, travail, effectue, eseguito, realizado, uitgevoerd*,
      yapilan is, yapilan, tehty, toimenpide, elvegzett munka, lucrare, lucrare efectuata, vykonane, provedeno,
      opravljeno, izvrseno, выполнено, работы, что сделано, виконано, εργασια, ενεργεια, 处理内容, 维修内容,
      處理內容, 処置, 作業内容, 対応, 조치, 작업내용`),
  ],
  [
    'found',
    list(`
      found, what was found, finding, findings, root cause, fault found, result, diagnosis, failure cause, failure
      mode, befund, fehlerursache, feststellung, constat, cause trouvee, diagnostic, riscontro, causa trovata,
      hallazgo, diagnostico, bevinding, fynd, funn, fund, arsak, stwierdzono, usterka, gefunden, festgestellt, trouve,
      constate, trovato, encontrado, constatado, gevonden, vastgesteld, hittat, funnet, fundet, konstateret,
      bulgu, tespit, havainto, vika, talalt, constatare, zistene, zjisteno, ugotovitev, обнаружено, выявлено,
      виявлено, ευρημα, 原因分析, 发现, 發現, 所見, 원인분석`),
  ],
  [
    'planned',
    list(`
      planned, scheduled, planned unplanned, art, stillstandsart, stoppart, stop type, downtime type, type d arret,
      tipo de parada, tipo di fermo, geplant, planifie, pianificato, planificado, planejado, gepland,
      planerad, planlagt, planowany,
      planli, suunniteltu, tervezett, planificat, planovane, плановый, планова, προγραμματισμενο, 计划, 計劃,
      計画, 계획`),
  ],
  [
    'reason',
    list(`
      reason, stop reason, downtime reason, stop cause, stoppage, cause, category, grund, stillstandsgrund,
      stoppgrund, ursache, motif, raison, motivo, causa, causale, razon, reden, oorzaak, arsag, orsak, arsak stopp,
      stoppasrsak, stoppasarsak, przyczyna, powod,
      neden, durus nedeni, syy, allasido oka, motiv, cauza, motiv oprire, dovod, duvod, vzrok, razlog, причина,
      причина останова, причина простоя, αιτια, ly do, alasan, 停机原因, 原因, 停機原因, 停止理由, 停止要因,
      理由, 정지원인, 원인, 사유`),
  ],
  [
    'state',
    list(`
      state, alarm state, alm, in alarm, event type, status, action state, transition, zustand, zust, etat, stato, estado, toestand,
      tillstand, tilstand, stan, stav, active, is active, type, typ, tipo, event state, change,
      event, ereignis, evenement, evento, hendelse, haendelse, handelse, on off, active inactive,
      tila, halytyksen tila, durum, durumu, alarm durumu, olay, allapot, esemeny, stare, eveniment, stav alarmu,
      udalost, stanje, dogodek, dogadaj, busena, stavoklis, olek, sundmus, состояние, статус, событие,
      тип события, стан, подія, състояние, събитие, κατασταση, συμβαν, trang thai, 状态, 报警状态, 事件,
      事件类型, 狀態, 報警狀態, 状態, 種別, イベント, 상태, 이벤트, 구분, tip, typ udalosti, tur, tyyppi, tipus,
      alarmo busena, trauksmes stavoklis, haire olek, състояние на алармата, trang thai canh bao, status alarm, สถานะ, الحالة,
      حالة الانذار, מצב, סטטוס`),
  ],
  [
    'priority',
    list(`
      priority, prio, severity, alarm class, class, level, prioritat, klasse, alarmklasse, priorite, gravite,
      priorita, dulezitost, prioridad, prioridade, prioriteit, prioritet, priorytet, urgency,
      oncelik, onem, seviye, prioriteetti, tarkeys, prioritas, sulyossag, prioritate, severitate, prioriteta,
      prioritetas, prioriteet, приоритет, важность, уровень, пріоритет, важливість, προτεραιοτητα, σοβαροτητα,
      uu tien, 优先级, 级别, 等级, 報警級別, 優先級, 等級, 優先度, 重要度, 우선순위, 등급, 중요도,
      svarba, svarigums, tahtsus, степен, muc do, muc uu tien, prioritas alarm, ลำดับความสำคัญ, ความสำคัญ, الاولوية, עדיפות,
      חומרה`),
  ],
  [
    'code',
    list(`
      code, alarm code, alarm no, alarm number, alarm id, error code, fault code, nr, nummer, alarmnummer,
      fehlercode, meldenummer, numero, codice, codigo, kod, kode, event id, id, no,
      kodu, koodi, halytysnumero, hibakod, cod, cod alarma, kod alarmu, koda, sifra, kodas, kods, kood, код,
      номер, код аварии, код тревоги, код аваріі, κωδικος, αριθμος, kode alarm, 代码, 报警代码, 编号, 代碼,
      編號, コード, 番号, 警報番号, 코드, 번호,
      aliarmo kodas, trauksmes kods, haire kood, код на алармата, ma loi, ma canh bao, kode kesalahan, รหัส, الرمز, الرقم, קוד,
      מספר`),
  ],
  [
    'zone',
    list(`
      zone, zones, heater, heating zone, heat zone, sensor, loop, heizzone, regelzone, zona, zon, sone, strefa,
      channel, kanal, position,
      bolge, isitma bolgesi, vyohyke, alue, futozona, cona, tsoon, зона, канал, контур, ζωνη, καναλι, vung,
      zona pemanas, 温区, 区域, 加热区, 溫區, 區域, 加熱區, ゾーン, チャンネル, 区, 존, 구역, 채널,
      kaitinimo zona, sildisanas zona, kuttetsoon, нагревна зона, vung nhiet, zona suhu, โซน, المنطقة, منطقة, אזור`),
  ],
  [
    'machine',
    list(`
      machine, line, equipment, asset, unit, maschine, anlage, linie, ligne, macchina, linea, maquina, linha,
      lijn, maskin, linje, maszyna, linia, press, work centre, work center, station, area,
      makine, makina, hat, kone, linja, gep, gepsor, masina, stroj, linka, linija, irenginys, iekarta, masin,
      liin, машина, линия, станок, агрегат, установка, лінія, верстат, μηχανη, γραμμη, day chuyen, mesin, 设备,
      机器, 机台, 生产线, 產線, 機台, 設備, 機器, 機械, ライン, 号機, 설비, 기계, 라인, 호기,
      masina, iekarta, seade, машина, may, thiet bi, peralatan, เครื่อง, เครื่องจักร, الماكينة, الالة, الخط, מכונה, קו`),
  ],
  [
    'source',
    list(`
      source, tag, tag name, tagname, object, point, item, name, device, block, variable, quelle, ort, messstelle,
      origine, repere, origen, origem, bron, kalla, kilde, zrodlo, zdroj, where, location, module,
      kaynak, etiket, etiket adi, lahde, tunnus, forras, cimke, sursa, eticheta, vir, izvor, saltinis, avots,
      allikas, источник, тег, объект, параметр, джерело, обєкт, източник, πηγη, ετικετα, nguon, sumber, 来源,
      变量, 标签, 來源, 變數, 位號, 位号, タグ, 発生元, 信号名, 태그, 발생원, 신호명,
      saltinis, avots, allikas, обект, doi tuong, asal, แหล่งที่มา, แท็ก, المصدر, מקור, תג`),
  ],
  [
    'value',
    list(`
      value, alarm value, limit, wert, istwert, grenzwert, valeur, valore, valor, waarde, varde, verdi, vaerdi,
      wartosc, setpoint, threshold,
      deger, arvo, ertek, valoare, vrednost, vrijednost, значение, значення, τιμη, 值, 数值, 數值, 値, 값`),
  ],
  [
    'message',
    list(`
      message, alarm, alarm text, alarm message, alarm description, description, event, text, condition, fault,
      error, comment, meldung, meldetext, alarmtext, storung, fehler, fehlertext, beschreibung, ereignis, message
      d alarme, alarme, defaut, libelle, messaggio, allarme, descrizione, evento, mensaje, alarma, descripcion,
      mensagem, descricao, melding, storing, omschrijving, meddelande, larm, larmtext, beskrivning, alarmtekst,
      beskrivelse, hendelse, haendelse, komunikat, opis, hlaseni, zprava, popis, porucha, note, notes, what,
      mesaj, alarm metni, alarm mesaji, aciklama, tanim, viesti, halytys, halytysteksti, kuvaus, selite, szoveg,
      riasztas, uzenet, leiras, hiba, mesaj alarma, descriere, text alarmu, sprava, hlasenie, poruka, sporocilo,
      pranesimas, aprasymas, aliarmas, zinojums, trauksme, apraksts, teade, haire, kirjeldus, сообщение, текст,
      описание, тревога, авария, повідомлення, опис, аварія, съобщение, аларма, μηνυμα, συναγερμος, περιγραφη,
      thong bao, canh bao, mo ta, noi dung, pesan, deskripsi, 报警, 报警内容, 报警信息, 报警文本, 描述, 消息,
      内容, 報警, 警報內容, 報警內容, 訊息, 內容, 警報, 警報内容, 警報名, メッセージ, アラーム, 메시지, 알람,
      알람명, 내용, 경보, 설명,
      aliarmo tekstas, zinojuma teksts, haire tekst, teade tekst, текст на алармата, описание на алармата, noi dung canh bao,
      pesan alarm, keterangan, ข้อความ, ข้อความแจ้งเตือน, คำอธิบาย, แจ้งเตือน, الرسالة, نص الانذار, الوصف, الانذار, הודעה, תיאור,
      התראה, אזעקה`),
  ],
  [
    'time',
    list(`
      time, timestamp, time stamp, date, datetime, date time, when, day, event time, zeit, zeitpunkt, zeitstempel,
      datum, uhrzeit, heure, horodatage, ora, data, data ora, fecha, hora, fecha hora, tijd, tijdstip, tid,
      tidpunkt, tidspunkt, dato, dato tid, czas, data godzina, cas, datum a cas, clock,
      tarih, saat, zaman, tarih saat, aika, paivamaara, aikaleima, pvm, kello, klokkeslett, ido, idopont,
      data si ora, vrijeme, vreme, datum i vrijeme, laikas, data ir laikas, laiks, datums, aeg, kuupaev, время,
      дата, дата и время, дата время, час, дата і час, ωρα, ημερομηνια, χρονος, ημερομηνια ωρα, thoi gian, ngay,
      gio, waktu, tanggal, 时间, 日期, 日期时间, 時間, 日時, 時刻, 日付, 시간, 일시, 날짜, 시각,
      ivykio laikas, notikuma laiks, sundmuse aeg, дата и час, време, ngay gio, thoi diem, waktu kejadian, tanggal waktu, เวลา,
      วันที่, วันเวลา, الوقت, التاريخ, التاريخ والوقت, זמן, תאריך, תאריך ושעה, שעה`),
  ],
];

/** Words so short or so common that they say so only where they are the whole name of a column: "De" and "A", "Od" and "Do". From memory. */
export const shortWords: readonly (readonly [EventRole, readonly string[]])[] = [
  [
    'start',
    list(
      'de, da, das, dal, dalle, od, fra, fran, van, vanaf, desde, depuis, ab, from to, von bis, od do, de a, fra til, van tot',
    ),
  ],
  ['end', list('a, as, al, alle, do, til, till, ate, hasta, tot, jusqu a')],
  [
    'time',
    list(
      'kl, godz, godzina, klokka, klokken, klo, jour, tag, dia, giorno, dag, dzien, den, wann, quand, cuando, quando, wanneer, nar, kiedy',
    ),
  ],
  ['message', list('was, quoi, que, cosa, wat, hva, hvad, vad, co')],
];
