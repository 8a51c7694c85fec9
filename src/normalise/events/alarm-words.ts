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
 * Italian, Spanish, Portuguese, Dutch, Swedish, Norwegian and Danish, Polish, Czech, Finnish, Chinese and Japanese.
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
      varmefeil, varmefejl, usterka grzalki, grzalka, bezpiecznik, vastusvika, sulake, 加热器, 加熱器, ヒーター, ヒータ`),
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
      开路, 開路`),
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
      传感器, 傳感器, 热电偶, 超量程, センサ*, 熱電対`),
  },
  {
    kind: 'communication',
    phrases: list(`
      comm, comms, communication*, com fault, com error, offline, no response, not responding, timeout, time out,
      link lost, link down, connection lost, lost connection, bus fault, bus error, bus fail*, fieldbus, network,
      node lost, watchdog, heartbeat,
      kommunikation*, verbindung*, busfehler, busstorung, zeituberschreitung, teilnehmer ausgefallen, comunic*,
      liaison*, perte de communication, bus en defaut, sin respuesta, sem resposta, communicatie*, verbinding*,
      kommunikasjon*, forbindelse, komunikac*, brak polaczenia, tiedonsiirto*, 通讯, 通信, 通訊`),
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
      hoj, odchylka wysoka, odchylka gorna, powyzej nastawy, 上偏差, 偏差高`),
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
      odchylka niska, odchylka dolna, ponizej nastawy, 下偏差, 偏差低`),
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
      ylilampo*, 超温, 温度高, 高温, 温度过高, 過熱`),
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
      za niska temperatura, alilampo*, 温度低, 低温, 温度过低`),
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
      materialu, koniec materialu, hatapysaytys, 急停, 卡料, 缺料, 门打开, 非常停止, 材料切れ`),
  },
  {
    kind: 'sensor-open',
    onlyOnZone: true,
    phrases: list(`
      open, break, broken, bruch, offen, rupture, coupure, rottura, rotura, breuk, brott, brudd, brud, przerwa,
      ol, sbr, sb`),
  },
  {
    kind: 'sensor-fault',
    onlyOnZone: true,
    phrases: list(`
      sensor, probe, sonda, fuhler*, thermoelement*, fault, failure, error, bad, invalid, short, reversed, fehler,
      kurzschluss, defaut, guasto, errore, fallo, falha, fout, fel, feil, fejl, blad, awaria`),
  },
  {
    kind: 'temperature-high',
    onlyOnZone: true,
    phrases: list(`
      high, hi, hihi, high high, hh, h, over, above, hot, upper limit, high limit, hoch, zu hoch, oberer
      grenzwert, haut, haute, alto, alta, hoog, hog, hogt, hoy, hoyt, hoj, wysoka, przekroczenie gorne, max*`),
  },
  {
    kind: 'temperature-low',
    onlyOnZone: true,
    phrases: list(`
      low, lo, lolo, low low, ll, l, under, below, cold, lower limit, low limit, niedrig, tief, zu niedrig,
      unterer grenzwert, bas, basse, basso, bassa, bajo, baja, baixo, baixa, laag, lag, lagt, lav, lavt, niska,
      przekroczenie dolne, min*`),
  },
];

/** The ten kinds, to check words given in plant.yaml. */
export const alarmKinds: readonly AlarmKind[] = [...new Set(alarmWords.map(({ kind }) => kind)), 'other'];
