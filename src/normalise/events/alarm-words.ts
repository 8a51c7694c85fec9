import type { AlarmKind } from '../../model/alarm.js';
import { list } from '../../words/fold.js';

/** Phrases that speak for one kind of alarm. */
export interface AlarmWords {
  readonly kind: AlarmKind;
  /** True: the phrase means this only in an alarm about a heater zone ("high" alone may be a level or a flow). */
  readonly onlyOnZone?: true;
  readonly phrases: readonly string[];
}

/**
 * The words of the trade for each kind of alarm, whole words, folded; * stands for more letters. The first line
 * that holds a phrase decides, so the narrower meaning stands first. Languages by line: English, German, French,
 * Italian, Spanish, Portuguese, Dutch, Swedish, Norwegian and Danish, Polish, Czech, Finnish, Chinese and Japanese;
 * then Turkish and Finnish, Danish, Hungarian, Romanian, Czech and Slovak, Slovene and Croatian, Baltic, Russian, Ukrainian and
 * Bulgarian, Greek, Vietnamese and Indonesian, Chinese in both scripts, Japanese and Korean.
 * Source: common practice; the page alarm-words.md says more.
 */
export const alarmWords: readonly AlarmWords[] = [
  {
    kind: 'heater',
    phrases: list(`
      heater open, heater break, heater broken, heater fail*, heater fault, heater burn out, heater burnout,
      heater short, heater current, heater alarm, heater load, no heater current, low current, load fail*, load
      break, partial load, ssr fail*, ssr short*, ssr fault, thyristor fault, contactor, fuse, heating element,
      loop break, no heat, output device,
      heizungsausfall, heizungsfehler, heizungsbruch, heizstrom*, heizkreis*, heizelement*, heizpatrone*, heizung
      defekt, heizung fehler, sicherung*, schutz gefallen, schutz fehler,
      resistance chauffante, defaut chauffage, defaut chauffe, rupture chauffage, fusible, guasto resistenza,
      resistenza interrotta, resistenza rotta, corrente resistenza, fusibile, fallo resistencia, resistencia
      abierta, resistencia rota, fallo calefac*, falha resistencia, resistencia queimada, fusivel,
      verwarmingselement*, verwarming defect, zekering, varmarfel, varmeelement*, varmare, sakring*, sikring*,
      varmefeil, varmefejl, usterka grzalki, grzalka, bezpiecznik, vastusvika, sulake,
      isitici arizasi, isitici ariza, isitici kopuk, isitici kopmasi, rezistans*, isitici sigorta*, sigorta*,
      isitici akimi, isitici kisa devre, ssr ariza*, kontaktor*, lammitinvika, lammittimen vika, lammitysvika,
      lammitysvastus*, vastus poikki, lammitin poikki, varmelegeme*, varmelegemefejl, futobetet*, futoelem*,
      futes hiba, futeshiba, futoszal*, biztositek*, rezistenta*, rezistenta intrerupta, defect rezistenta,
      defect incalzire, siguranta*, intrerupere rezistenta, porucha topeni, porucha ohrevu, topne teleso*,
      prerusene topeni, prerusene ohrievacie teleso, poistka*, pojistka*, ohrev porucha, porucha vyhrievania,
      napaka grelca, okvara grelca, varovalka*, kvar grijaca, osigurac*, sildytuvo gedimas, silditaja bojajums,
      kutteelemen*, kuttekeha*, обрыв нагревателя, неисправность нагревателя, отказ нагревателя,
      авария нагревателя, обрыв тэна, обрыв тэн, тэн*, перегорел тэн, перегорание нагревателя,
      короткое замыкание нагревателя, ток нагревателя, предохранитель*, контактор*, твердотельное реле,
      обрив нагрівача, несправність нагрівача, відмова нагрівача, обрив тена, тен, запобіжник*,
      неизправен нагревател, прекъснат нагревател, предпазител*, βλαβη αντιστασης, διακοπη αντιστασης,
      σφαλμα θερμανσης, βλαβη θερμανσης, ασφαλεια καμενη, dien tro nhiet, loi gia nhiet, dut dien tro,
      pemanas rusak, 发热管, 电热管, 加热管, 加热断线, 加热故障, 加熱管, 電熱管, 加熱斷線, 熔断器, 保险丝, 熔絲,
      ヒューズ, 히터 단선, 히터 이상, 히터 고장, 히터 전류, ヒータ 断線, ヒータ 異常, ヒータ 故障, ヒータ 短絡,
      ヒータ 電流, 加热器 断, 加热器 故障, 加热器 短路, 加热器 异常, 加热器 电流, 加熱器 斷, 加熱器 故障,
      加熱器 異常, 퓨즈, 전열`),
  },
  {
    kind: 'sensor-open',
    phrases: list(`
      open circuit, sensor break, sensor broken, sensor open, open sensor, sensor burn out, sensor burnout,
      burnout, burn out, thermocouple break, thermocouple open, thermocouple broken, open thermocouple, t c open,
      tc open, tc break, t c break, rtd open, rtd break, open rtd, probe open, probe break, probe broken, input
      open, open input, wire break, wire broken, broken wire, line break, open loop sensor, sensor disconnected,
      probe disconnected, sensor unplugged, no sensor,
      fuhlerbruch, fuehlerbruch, fuhler bruch, fuhler offen, *drahtbruch, *leitungsbruch, sensorbruch, sensor
      bruch, sensor offen, thermoelementbruch, thermoelement bruch, thermoelement offen, geberbruch, messkreis
      offen,
      rupture sonde, rupture capteur, rupture thermocouple, coupure sonde, coupure capteur, coupure thermocouple,
      capteur coupe, sonde coupee, sonde ouverte, circuit ouvert,
      rottura sonda, rottura sensore, rottura termocoppia, sonda interrotta, sonda rotta, sonda aperta,
      termocoppia interrotta, termocoppia aperta, circuito aperto,
      rotura sonda, rotura de sonda, rotura sensor, rotura de sensor, sonda rota, sonda abierta, sensor abierto,
      termopar abierto, termopar roto, circuito abierto, sensor aberto, sensor rompido, termopar aberto, ruptura
      do sensor, circuito aberto,
      sensorbreuk, voelerbreuk, draadbreuk, kabelbreuk, thermokoppelbreuk, givarbrott, sensorbrott, kabelbrott,
      avbrott givare, ledningsbrott, folerbrudd, sensorbrudd, ledningsbrudd, brudd pa foler, brudd i foler,
      folerbrud, sensorbrud, ledningsbrud, kabelbrud, brud pa foler,
      przerwa czujnika, przerwa w obwodzie, uszkodzony czujnik przerwa, preruseny snimac, preruseni snimace,
      preruseny termoclanek, preruseni cidla, anturikatkos, anturi poikki, 断偶, 断线, 断線,
      开路, 開路,
      sensor kopuk, sensor koptu, sensor kopmasi, sensor acik devre, termokupl kopuk, termokupl koptu,
      termokupl acik, prob kopuk, kablo kopuk, sensor kopuklugu, prob koptu, anturi katki, anturikatko,
      termoelementti poikki, johdinkatko, johdin poikki, anturin katkos, anturi auki, sensorbrud*, folerbrud*,
      aben foler, afbrudt foler, folerbrudd*, apen foler, brudd termoelement, givaravbrott,
      avbrott termoelement, oppen givare, erzekelo szakadas, erzekeloszakadas, szondaszakadas, szonda szakadas,
      hoelem szakadas, hoelemszakadas, vezetekszakadas, szenzorszakadas, szenzor szakadas, szakadas,
      senzor intrerupt, sonda intrerupta, intrerupere senzor, intrerupere sonda, termocuplu intrerupt,
      intrerupere termocuplu, circuit intrerupt, fir intrerupt, rupere senzor, prerusenie snimaca,
      prerusene cidlo, preruseny termoclanok, prerusenie cidla, utrzene cidlo, rozpojeny snimac,
      przerwany czujnik, przerwa czujnik*, przerwana termopara, przerwa termopary, zerwany czujnik,
      przerwanie czujnika, prekinitev senzorja, prekinjen senzor, prekinitev tipala, prekinjeno tipalo,
      prekinjen termoclen, prekid senzora, prekid sonde, prekinut senzor, prekid termopara,
      prekid termoelementa, jutiklio trukis, nutrukes jutiklis, termoporos trukis, sensora parravums,
      termopara parravums, anduri katkestus, termopaari katkestus, обрыв датчика, обрыв термопары,
      обрыв термопары*, обрыв цепи, обрыв линии, обрыв провода, обрыв терм*, датчик оборван, обрыв входа,
      термопара обрыв, датчик обрыв, обрив датчика, обрив термопари, обрив кола, обрив лініі, обрив терм*,
      прекъснат датчик, прекъсната термодвойка, скъсан датчик, διακοπη αισθητηρα, ανοιχτο κυκλωμα,
      ανοικτο κυκλωμα, κομμενος αισθητηρας, διακοπη θερμοζευγους, ανοικτος αισθητηρας, dut cam bien, ho mach,
      dut day cam bien, sensor putus, termokopel putus, 断路, 斷路, 斷線, 斷偶, バーンアウト, センサ断線,
      熱電対断線, 단선, 센서단선, 번아웃`),
  },
  {
    kind: 'sensor-fault',
    phrases: list(`
      out of range, over range, overrange, under range, underrange, input fault, input fail*, input error, sensor
      fault, sensor fail*, sensor error, sensor short*, short circuit, probe fault, probe fail*, probe error,
      probe short*, thermocouple fault, thermocouple fail*, thermocouple error, thermocouple short*, thermocouple
      reversed, reversed thermocouple, tc fault, tc error, rtd fault, rtd fail*, rtd error, rtd short*, bad pv,
      bad input, bad value, bad quality, bad measurement, pv bad, pv fault, invalid pv, measurement fault,
      transmitter fault, channel fault, signal fault, signal lost,
      fuhlerfehler, fuhler fehler, fuhlerkurzschluss, fuhlerstorung, sensorfehler, sensor fehler,
      sensorkurzschluss, sensorstorung, messbereich*, messwert ungultig, messfehler, eingangsfehler, istwert
      ungultig,
      defaut sonde, defaut capteur, defaut mesure, defaut entree, defaut thermocouple, hors gamme, hors echelle,
      mesure invalide, court circuit sonde, guasto sonda, errore sonda, guasto sensore, errore sensore, fuori
      scala, fuori campo, cortocircuito sonda, fallo sonda, fallo de sonda, fallo sensor, fallo de sensor, error
      sensor, fuera de rango, falha sensor, falha do sensor, falha de sensor, fora de faixa, termopar,
      termocoppia,
      sensorfout, voelerfout, voeler defect, sensor defect, buiten bereik, meetfout, thermokoppel, givarfel, sensorfel, matfel, utanfor
      matomrade, folerfeil, sensorfeil, malefeil, utenfor omrade, utenfor maleomrade, folerfejl, sensorfejl, uden
      for omrade, usterka czujnika, blad czujnika, awaria czujnika, poza zakresem, zwarcie czujnika, porucha snimace,
      porucha cidla, zkrat snimace, mimo rozsah, anturivika,
      传感器, 傳感器, 热电偶, 超量程, センサ*, 熱電対,
      sensor arizasi, sensor ariza, sensor hatasi, prob arizasi, prob hatasi, termokupl arizasi,
      termokupl hatasi, olcum hatasi, aralik disi, sensor kisa devre, termokupl ters, anturivika*, anturin vika,
      anturi vika, anturihairio, mittausvirhe, mittausvika, oikosulku anturi, anturin oikosulku,
      mittausalueen ulkopuolella, alueen ulkopuolella, folerfejl*, maleomrade, uden for maleomrade,
      kortslutning foler, kortsluttet foler, givarfel*, sensorfel*, erzekelo hiba, erzekelohiba, szenzorhiba,
      szondahiba, hoelem hiba, meresi hiba, tartomanyon kivul, meresi tartomanyon*, szonda hiba, rovidzar*,
      defect senzor, eroare senzor, defect sonda, defect termocuplu, in afara domeniului, scurtcircuit senzor,
      senzor defect, sonda defecta, eroare masurare, porucha snimaca, porucha senzora, chyba snimaca,
      chyba snimace, chyba senzoru, mimo rozsahu, skrat snimaca, porucha termoclanku, zkrat cidla,
      napaka senzorja, napaka tipala, izven obmocja, kratek stik senzorja, kvar senzora, greska senzora,
      izvan opsega, izvan podrucja, kratki spoj senzora, kvar sonde, jutiklio gedimas, jutiklio klaida,
      sensora kluda, sensora bojajums, anduri viga, неисправность датчика, отказ датчика, ошибка датчика,
      авария датчика, замыкание датчика, кз датчика, вне диапазона, выход за диапазон, недостоверн*,
      неисправность термопары, сбой датчика, несправність датчика, відмова датчика, помилка датчика,
      замикання датчика, поза діапазоном, несправність термопари, недостовірн*, повреда датчик,
      неизправен датчик, грешка датчик, извън обхват, σφαλμα αισθητηρα, βλαβη αισθητηρα, εκτος οριων,
      εκτος ευρους, βραχυκυκλωμα αισθητηρα, loi cam bien, ngoai dai, sensor rusak, di luar jangkauan, 探头,
      探頭, 感温, 感溫, 測温抵抗体, レンジ外, 範囲外, 入力異常, 센서이상, 센서 이상, 센서고장, 센서, 입력이상`),
  },
  {
    kind: 'communication',
    phrases: list(`
      comm, comms, communication*, com fault, com error, offline, no response, not responding, timeout, time out,
      link lost, link down, connection lost, lost connection, bus fault, bus error, bus fail*, fieldbus, network,
      node lost, watchdog, heartbeat,
      kommunikation*, verbindung*, busfehler, busstorung, zeituberschreitung, teilnehmer ausgefallen, comunic*,
      liaison*, perte de communication, bus en defaut, sin respuesta, sem resposta, communicatie*, verbinding*,
      kommunikasjon*, forbindelse, komunikac*, brak polaczenia, tiedonsiirto*, 通讯, 通信, 通訊,
      haberlesme*, iletisim*, baglanti koptu, baglanti kesildi, yhteyskatko, yhteysvika, yhteys poikki,
      tiedonsiirtovika, vaylavika, kommunikationsfejl, forbindelsesfejl, kommunikacios*, kapcsolat megszakadt,
      kommunikacio*, eroare comunicatie, comunicatie*, lipsa comunicatie, ztrata spojeni, strata spojenia,
      chyba komunikace, komunikacia*, komunikace*, napaka komunikacije, komunikacija*, rysio*, sakaru*,
      sideviga, нет связи, обрыв связи, потеря связи, ошибка связи, связь*, ошибка обмена, нет ответа,
      немає зв'язку, втрата зв'язку, помилка зв'язку, няма връзка, загуба на връзка, απωλεια επικοινωνιας,
      επικοινωνια*, σφαλμα επικοινωνιας, mat ket noi, loi truyen thong, komunikasi*, 通信異常, 通讯故障,
      连接断开, 掉线, 離線, 离线, 통신`),
  },
  {
    kind: 'deviation-high',
    phrases: list(`
      high deviation, deviation high, deviation hi, hi deviation, positive deviation, plus deviation, upper
      deviation, over set point, over setpoint, above set point, above setpoint, above tolerance, over tolerance,
      over sp, above sp, dev hi, dev high, dvhi, devh, dh, pvdevh,
      abweichung hoch, abweichung zu hoch, abweichung positiv, regelabweichung hoch, regelabweichung zu hoch,
      regelabweichung positiv, uber sollwert, obere abweichung, uber toleranz, toleranz uberschritten,
      ecart haut, ecart positif, au dessus de la consigne, scostamento alto, deviazione alta, sopra set*,
      desviacion alta, desvio alto, sobre consigna, acima do set*, afwijking hoog, boven setpoint, boven
      gewenste*, avvikelse hog, over borvarde, avvik hoyt, hoyt avvik, over settpunkt, over saetpunkt, afvigelse
      hoj, odchylka wysoka, odchylka gorna, powyzej nastawy, 上偏差, 偏差高,
      sapma yuksek, yuksek sapma, pozitif sapma, ayar ustu, poikkeama ylos, poikkeama korkea, poikkeama yli,
      ylapoikkeama, hoj afvigelse, pozitiv elteres, elteres magas, magas elteres, felso elteres, abatere mare,
      abatere superioara, abatere pozitiva, vysoka odchylka, horni odchylka, kladna odchylka, horna odchylka,
      veliko odstopanje, visoko odstopanje, odstupanje visoko, верхнее отклонение, отклонение вверх,
      большое отклонение, отклонение выше, выше уставки, положительное отклонение, верхнє відхилення,
      відхилення вгору, вище уставки, αποκλιση υψηλη, υψηλη αποκλιση, θετικη αποκλιση, 偏差上限, 上限偏差,
      偏差大, 上限偏差警報, 偏差過高, 편차상한, 편차 상한, 상한편차`),
  },
  {
    kind: 'deviation-low',
    phrases: list(`
      low deviation, deviation low, deviation lo, lo deviation, negative deviation, minus deviation, lower
      deviation, below set point, below setpoint, under set point, under setpoint, below tolerance, under
      tolerance, below sp, under sp, dev lo, dev low, dvlo, devl, dl, pvdevl, not at temperature, not up to
      temperature,
      abweichung tief, abweichung niedrig, abweichung zu niedrig, abweichung negativ, regelabweichung tief,
      regelabweichung zu niedrig, regelabweichung negativ, unter sollwert, untere abweichung, unter toleranz,
      toleranz unterschritten,
      ecart bas, ecart negatif, sous la consigne, en dessous de la consigne, scostamento basso, deviazione bassa,
      sotto set*, desviacion baja, desvio baixo, bajo consigna, abaixo do set*, afwijking laag, onder setpoint,
      avvikelse lag, under borvarde, avvik lavt, lavt avvik, under settpunkt, under saetpunkt, afvigelse lav,
      odchylka niska, odchylka dolna, ponizej nastawy, 下偏差, 偏差低,
      sapma dusuk, dusuk sapma, negatif sapma, ayar alti, poikkeama alas, poikkeama matala, poikkeama ali,
      alapoikkeama, lav afvigelse, negativ elteres, elteres alacsony, alacsony elteres, also elteres,
      abatere mica, abatere inferioara, abatere negativa, nizka odchylka, dolni odchylka, zaporna odchylka,
      dolna odchylka, nizko odstopanje, odstupanje nisko, нижнее отклонение, отклонение вниз, отклонение ниже,
      ниже уставки, отрицательное отклонение, нижнє відхилення, відхилення вниз, нижче уставки, αποκλιση χαμηλη,
      χαμηλη αποκλιση, αρνητικη αποκλιση, 偏差下限, 下限偏差, 偏差過低, 편차하한, 편차 하한, 하한편차`),
  },
  {
    kind: 'temperature-high',
    phrases: list(`
      temperature high*, temp high*, high* temperature, high* temp, temperature too high, temp too high,
      temperature hi, temp hi, hi temp*, hihi temp*, over temp*, overtemp*, overheat*, too hot, excess temp*,
      maximum temperature, upper temperature limit, tah, tahh, tshh,
      ubertemperatur*, temperatur zu hoch, temperatur hoch, uberhitz*, maximaltemperatur, temperatur oberer*,
      temperature haute, temperature trop haute, temperature elevee, surchauffe, surtemperature, temperatura alta,
      alta temperatura, temperatura troppo alta, sovratemperatura, surriscaldamento, sobretemperatura,
      sobrecalentamiento, temperatura demasiado alta, sobreaquecimento,
      temperatuur hoog, temperatuur te hoog, hoge temperatuur, overtemperatuur, oververhit*, hog temperatur,
      temperatur hog*, overtemperatur, overhett*, overhed*, hoy temperatur, temperatur hoy*, temperatur for hoy,
      hoj temperatur, temperatur hoj*, temperatura wysoka, wysoka temperatura, za wysoka temperatura, przegrzanie,
      ylilampo*, 超温, 温度高, 高温, 温度过高, 過熱,
      asiri sicaklik, sicaklik yuksek, yuksek sicaklik, asiri isinma, sicaklik cok yuksek, sicaklik ust limit*,
      yuksek isi, lampotila korkea, korkea lampotila, liian korkea lampotila, lampotila liian korkea,
      lampotila yli*, ylikuuma*, lampotilan ylaraja, temperatur for hoj, temperaturen er for hoj,
      magas homerseklet, tul magas homerseklet, homerseklet tul magas, homerseklet magas, tulmelegedes,
      tulhevules, tulhomerseklet, temperatura ridicata, temperatura inalta, temperatura prea mare,
      supratemperatura, supraincalzire, temperatura mare, vysoka teplota, teplota vysoka, prilis vysoka teplota,
      prehrati, prehriatie, prekroceni teploty, prekrocenie teploty, teplota nad*, previsoka temperatura,
      visoka temperatura, temperatura previsoka, temperatura visoka, pregrevanje, pregrijavanje,
      auksta temperatura, per auksta temperatura, perkaitimas, augsta temperatura, parkarsana,
      korge temperatuur, ulekuumenemine, liiga korge temperatuur, высокая температура, температура высокая,
      перегрев*, температура выше*, превышение температуры, температура слишком высокая,
      верхний предел температуры, завышена температура, висока температура, перегрів*, перевищення температури,
      температура вище*, прегряване, υψηλη θερμοκρασια, θερμοκρασια υψηλη, υπερθερμανση, πολυ υψηλη θερμοκρασια,
      υπερβαση θερμοκρασιας, nhiet do cao, qua nhiet, suhu tinggi, panas berlebih, 温度超高, 温度上限, 溫度過高,
      溫度高, 過溫, 超溫, 高溫, 温度過高, 温度高すぎ, 温度上昇, 上限温度, 温度上限警報, 過昇温, 고온, 과열,
      온도상한, 온도 상한, 온도높음`),
  },
  {
    kind: 'temperature-low',
    phrases: list(`
      temperature low*, temp low*, low* temperature, low* temp, temperature too low, temp too low, temperature lo,
      temp lo, lo temp*, lolo temp*, under temp*, undertemp*, too cold, minimum temperature, lower temperature
      limit, tal, tall, tsll,
      untertemperatur*, temperatur zu niedrig, temperatur zu tief, temperatur niedrig, temperatur tief,
      minimaltemperatur, temperatur unterer*, temperature basse, temperature trop basse, sous temperature,
      temperatura bassa, bassa temperatura, temperatura troppo bassa, temperatura baja, baja temperatura,
      temperatura baixa, baixa temperatura, temperatura demasiado baja,
      temperatuur laag, temperatuur te laag, lage temperatuur, ondertemperatuur, lag temperatur, temperatur lag*,
      undertemperatur, lav temperatur, temperatur lav*, temperatur for lav, temperatura niska, niska temperatura,
      za niska temperatura, alilampo*, 温度低, 低温, 温度过低,
      dusuk sicaklik, sicaklik dusuk, sicaklik cok dusuk, sicaklik alt limit*, lampotila matala,
      matala lampotila, liian matala lampotila, lampotila liian matala, lampotila ali*, lampotilan alaraja,
      temperaturen er for lav, alacsony homerseklet, tul alacsony homerseklet, homerseklet tul alacsony,
      homerseklet alacsony, temperatura scazuta, temperatura prea mica, temperatura joasa, subtemperatura,
      temperatura mica, nizka teplota, teplota nizka, prilis nizka teplota, podkroceni teploty, teplota pod*,
      prenizka temperatura, nizka temperatura, temperatura preniska, zema temperatura, per zema temperatura,
      madal temperatuur, liiga madal temperatuur, низкая температура, температура низкая, температура ниже*,
      недогрев*, температура слишком низкая, нижний предел температуры, низька температура, температура нижче*,
      недогрів*, ниска температура, χαμηλη θερμοκρασια, θερμοκρασια χαμηλη, πολυ χαμηλη θερμοκρασια,
      nhiet do thap, suhu rendah, 温度超低, 温度下限, 溫度過低, 溫度低, 低溫, 温度低下, 下限温度, 温度下限警報,
      저온, 온도하한, 온도 하한, 온도낮음`),
  },
  {
    kind: 'machine-stop',
    phrases: list(`
      guard, guard open, door, cover open, hood open, gate open, light curtain, emergency stop, e stop, estop,
      emergency, safety circuit, interlock*, jam*, blocked, blockage, material end, end of material, out of
      material, no material, material low, film end, film break, web break, end of roll, reel end, no product,
      infeed empty, starved, backed up, discharge full, reject limit, reject*, machine stop*, line stop*, stopped,
      stop, stop button, drive fault, motor overload, servo fault, overload, air pressure, low air, no air,
      vacuum, lubrication, lube,
      not halt, not aus, notaus, nothalt, schutztur*, schutzhaube*, tur offen, haube offen, stau, *stau,
      materialende, material ende, kein material, folienende, folienriss, bahnriss, kein produkt, ausschuss*,
      maschine steht, maschine gestoppt, maschinenstopp, antrieb*, motorschutz, druckluft*,
      arret d urgence, arret urgence, arret machine, porte ouverte, protecteur ouvert, carter ouvert, bourrage,
      fin de matiere, fin de bobine, manque produit, manque matiere, rebut*, manque air, arresto, emergenza, porta
      aperta, riparo aperto, inceppamento, fine materiale, fine bobina, mancanza prodotto, scarti*, mancanza aria,
      fermo macchina,
      paro, paro de emergencia, parada, parada de emergencia, puerta abierta, resguardo abierto, atasco, fin de
      material, falta material, falta de material, falta producto, rechazo*, falta de aire, porta aberta, protecao
      aberta, emperramento, fim de material, falta de produto, rejeito*, falta de ar,
      noodstop, deur open, kap open, vastloper, opstopping, materiaal op, einde materiaal, machine gestopt,
      nodstopp, lucka oppen, dorr oppen, skydd oppet, materialslut, materialstopp, maskinstopp, dor apen, deksel
      apent, vern apent, fastkjort*, blokkert, tom for material*, maskinen stoppet, stoppet, nodstop, lage aben,
      materiale slut, zatrzymanie awaryjne, stop awaryjny, oslona otwarta, drzwi otwarte, zator, zaciecie, brak
      materialu, koniec materialu, hatapysaytys, 急停, 卡料, 缺料, 门打开, 非常停止, 材料切れ,
      acil durdurma, acil stop, kapi acik, koruma acik, kapak acik, sikisma, malzeme yok, malzeme bitti,
      makine durdu, hava basinci*, hava yok, film bitti, film koptu, surucu hatasi, hataseis, ovi auki,
      suoja auki, luukku auki, tukos, materiaali loppu, materiaali lopussa, kone pysahtyi, kone seis, ei ilmaa,
      paineilma*, kalvo loppu, tuote puuttuu, dor aben, afskaermning aben, materialestop, maskine stoppet,
      trykluft*, veszleallitas, veszstop, ajto nyitva, vedoburkolat*, burkolat nyitva, elakadas, anyaghiany,
      nincs anyag, gep leallt, levegonyomas*, folia vege, oprire de urgenta, usa deschisa, protectie deschisa,
      blocaj, lipsa material, masina oprita, presiune aer*, lipsa aer, sfarsit folie, nouzove zastaveni,
      nouzovy stop, nudzove zastavenie, nudzovy stop, kryt otevren, dvere otevreny, kryt otvoreny,
      dvere otvorene, otevreny kryt, otvoreny kryt, zaseknuti, zaseknutie, konec materialu, dosel material,
      nedostatek materialu, stroj zastaven, stroj zastaveny, tlak vzduchu*, izklop v sili, zasilni stop,
      vrata odprta, pokrov odprt, zastoj, zmanjkalo materiala, stroj ustavljen, nuzni stop, vrata otvorena,
      poklopac otvoren, nestalo materijala, stroj zaustavljen, avarinis stop*, durys atidarytos, avarijas stop*,
      durvis atvertas, hadaseiskamine, uks avatud, аварийный останов, аварийная остановка, аварийный стоп,
      дверь открыта, ограждение открыто, кожух открыт, защита открыта, затор, застревание, нет материала,
      конец материала, нет продукта, машина остановлена, останов машины, остановка линии, давление воздуха,
      нет воздуха, конец пленки, обрыв пленки, привод*, аварійна зупинка, аварійний стоп, двері відкриті,
      двері відчинені, огородження відкрито, застрягання, немає матеріалу, зупинка машини, тиск повітря,
      кінець плівки, обрив плівки, авариен стоп, врата отворена, няма материал, επειγουσα διακοπη,
      διακοπη εκτακτης αναγκης, πορτα ανοικτη, πορτα ανοιχτη, προφυλακτηρας ανοικτος, εμπλοκη, τελος υλικου,
      ελλειψη υλικου, σταση μηχανης, πιεση αερα, dung khan cap, cua mo, ket, het vat lieu, berhenti darurat,
      pintu terbuka, macet, material habis, 安全门, 安全門, 門打開, 门开, 门未关, 門未關, 护罩, 護罩, 卡膜,
      断膜, 無料, 缺膜, 气压低, 氣壓低, 停机, 停機, 驱动器, 扉開, 扉, カバー開, 詰まり, 材料なし, フィルム切れ,
      機械停止, エア圧, 비상정지, 도어열림, 도어 열림, 커버열림, 걸림, 자재없음, 자재부족, 필름끝, 기계정지,
      공압`),
  },
  {
    kind: 'sensor-open',
    onlyOnZone: true,
    phrases: list(`
      open, break, broken, bruch, offen, rupture, coupure, rottura, rotura, breuk, brott, brudd, brud, przerwa,
      ol, sbr, sb,
      kopuk, koptu, acik devre, katki, poikki, katkos, brudt, afbrudt, szakadt, intrerupt, intrerupta,
      preruseny, prekinjen, prekinut, prekid, обрыв, обрив, διακοπη, putus`),
  },
  {
    kind: 'sensor-fault',
    onlyOnZone: true,
    phrases: list(`
      sensor, probe, sonda, fuhler*, thermoelement*, fault, failure, error, bad, invalid, short, reversed, fehler,
      kurzschluss, defaut, guasto, errore, fallo, falha, fout, fel, feil, fejl, blad, awaria,
      sensor*, termokupl*, ariza, arizasi, hata, hatasi, anturi*, vika, hairio, virhe, erzekelo*, szonda*,
      hoelem*, hiba, senzor*, defect, eroare, porucha, chyba, snimac*, cidlo, tipalo, napaka, kvar, greska,
      jutiklis, gedimas, klaida, bojajums, kluda, viga, датчик*, термопара, неисправность, отказ, ошибка, сбой,
      несправність, відмова, помилка, повреда, грешка, αισθητηρας, θερμοζευγος, βλαβη, σφαλμα, cam bien, loi,
      故障, 异常, 異常, 고장, 이상`),
  },
  {
    kind: 'temperature-high',
    onlyOnZone: true,
    phrases: list(`
      high, hi, hihi, high high, hh, h, over, above, hot, upper limit, high limit, hoch, zu hoch, oberer
      grenzwert, haut, haute, alto, alta, hoog, hog, hogt, hoy, hoyt, hoj, wysoka, przekroczenie gorne, max*,
      yuksek, ust limit, cok yuksek, korkea, ylaraja, yli, for hoj, magas, tul magas, felso hatar, ridicat,
      ridicata, inalt, mare, limita superioara, vysoka, vysoky, horni mez, horna hranica, visoka, visoko,
      previsoka, zgornja meja, gornja granica, auksta, augsta, korge, высокая, высокий, верхний предел, выше,
      превышение, верхн*, висока, високий, вище, перевищення, υψηλη, υψηλο, ανω οριο, cao, tinggi, 过高, 超高,
      上限, 過高, 高, 상한, 높음`),
  },
  {
    kind: 'temperature-low',
    onlyOnZone: true,
    phrases: list(`
      low, lo, lolo, low low, ll, l, under, below, cold, lower limit, low limit, niedrig, tief, zu niedrig,
      unterer grenzwert, bas, basse, basso, bassa, bajo, baja, baixo, baixa, laag, lag, lagt, lav, lavt, niska,
      przekroczenie dolne, min*,
      dusuk, alt limit, cok dusuk, matala, alaraja, ali, for lav, alacsony, tul alacsony, also hatar, scazut,
      scazuta, joasa, limita inferioara, nizka, nizky, dolni mez, dolna hranica, nizko, prenizka, nisko,
      spodnja meja, donja granica, zema, madal, низкая, низкий, нижний предел, ниже, нижн*, низька, низький,
      нижче, ниска, χαμηλη, χαμηλο, κατω οριο, thap, rendah, 过低, 超低, 下限, 過低, 低, 하한, 낮음`),
  },
  {
    // Where no more is said, the heater is meant; "heater 3 too hot" has been met above.
    kind: 'heater',
    onlyOnZone: true,
    phrases: list('加热器, 加熱器, ヒータ, 히터'),
  },
];

/** The ten kinds, to check words given in plant.yaml. */
export const alarmKinds: readonly AlarmKind[] = [...new Set(alarmWords.map(({ kind }) => kind)), 'other'];
