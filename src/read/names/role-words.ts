import type { ColumnRole } from '../../model/log-file.js';
import { foldText, list } from '../../words/fold.js';

/** What a word in a column's name says of the column. `temperature` alone means a reading. */
export type WordMeaning =
  Extract<ColumnRole, 'reading' | 'setpoint' | 'output' | 'running' | 'quality'> | 'temperature' | 'filler' | 'other';

/**
 * Words of column and tag names, by meaning, a language or family of languages to a line: English, German, French,
 * Spanish, Italian, Portuguese, Dutch, Norwegian with Danish and Swedish, Polish, Czech, Finnish, Hungarian, Turkish, Russian.
 * Lower case, without accents, parts joined by one blank; matched as whole words. Common practice of controllers and
 * historians; the page role-words.md shows the table, and plant.yaml can name any column that it does not know.
 */
export const roleWords: Readonly<Record<WordMeaning, readonly string[]>> = {
  reading: list(`
    act, actual, actual value, act value, pv, process value, process variable, measured, measured value, measurement,
    reading, present value, current value, input, in, meas, mes,
    ist, istwert, ist wert, isttemperatur, isttemp, messwert, gemessen, aktuell, aktueller wert,
    mesure, mesuree, valeur mesuree, valeur reelle, valeur actuelle, reel, reelle, actuelle, relevee,
    medida, medido, valor real, valor medido, valor actual, valor de proceso, real, leida, leido, lectura,
    misura, misurata, misurato, valore misurato, valore attuale, attuale, reale, letto, letta, valore letto, lettura,
    rilevata, rilevato, effettiva, effettivo,
    leitura, valor atual, atual, valor lido, lido, lida, valor de processo,
    gemeten, gemeten waarde, werkelijk, werkelijke, werkelijke waarde, meetwaarde, actueel, actuele, actuele waarde,
    huidig, huidige, huidige waarde,
    erverdi, aerverdi, er verdi, malt, maleverdi, arvarde, ar varde, matvarde, aktuel, uppmatt,
    mierzona, zmierzona, wartosc mierzona, aktualna, wartosc aktualna, rzeczywista, wartosc rzeczywista, pomiar, odczyt,
    skutecna, skutecna hodnota, namerena, merena, merena hodnota, aktualni, mereni,
    mittaus, mitattu, mittausarvo, oloarvo, mert, mert ertek, tenyleges, aktualis, gercek, olculen, okunan, anlik,
    текущая, измеренная`),
  setpoint: list(`
    sp, set, setpoint, set point, set value, setvalue, sv, setp, stpt, target, wsp, csp, set temp, set temperature,
    temp set, target temp, target value, desired, demand temp, working setpoint,
    soll, sollwert, soll wert, solltemperatur, solltemp, vorgabe, vorgabewert,
    consigne, cons, point de consigne, valeur de consigne, temperature de consigne, t de consigne,
    consigna, punto de ajuste, punto de consigna, valor de consigna, temperatura de consigna, deseada, deseado,
    valor deseado, ajuste, ajustada, ajustado, objetivo,
    impostato, impostata, impostazione, imposta, valore impostato, riferimento, valore di set, richiesta,
    alvo, valor desejado, desejado, desejada, programado, programada, valor programado, referencia,
    setpunt, setwaarde, gewenst, gewenste, gewenste waarde, ingesteld, ingestelde, instelwaarde, ingestelde waarde,
    streefwaarde,
    skalverdi, skal verdi, settpunkt, borvarde, bor varde, onsket, saetpunkt, indstilling,
    zadana, wartosc zadana, temperatura zadana, nastawa, zadana hodnota, pozadovana, nastavena,
    asetus, asetusarvo, asetettu, ohjearvo, alapjel, beallitott, kivant, ayar, ayarlanan, set degeri, hedef, istenen,
    уставка, задание, заданная`),
  output: list(`
    out, output, cv, mv, op, duty, duty cycle, power, pwr, heat, heating, heater, heat output, heater output,
    control output, co, controller output, manipulated variable, control value, control variable, power output,
    heater power, heat demand, heat duty, pid out, pid output, y,
    stellgrad, stellwert, stellgrosse, stellgroesse, ausgang, ausgangsgrad, leistung, heizleistung, heizung,
    sortie, puissance, chauffe, commande, taux de chauffe, puissance de chauffe, chauffage,
    salida, potencia, salida de control, calefaccion, calentamiento, uscita, potenza, riscaldamento,
    saida, saida de controle, aquecimento, vermogen, uitgang, uitsturing, verwarming, stuursignaal,
    padrag, utgang, effekt, ydelse, udgang, utsignal,
    wyjscie, moc, moc grzania, grzanie, wysterowanie, vykon, vystup, akcni zasah, topeni,
    ohjaus, lahto, teho, lammitysteho, kimenet, teljesitmeny, futes, cikis, guc, isitma,
    мощность, выход, нагрев`),
  running: list(`
    running, run, is running, machine running, machine state, machine status, state, status, mode, speed, line speed,
    machine speed, rate, cycles, cycle rate, production, in production,
    betrieb, in betrieb, lauft, laeuft, zustand, maschinenzustand, geschwindigkeit, drehzahl, takt, taktzahl,
    bahngeschwindigkeit, liniengeschwindigkeit, maschinengeschwindigkeit, schneckendrehzahl, maschinendrehzahl,
    marche, en marche, etat, vitesse, marcha, en marcha, estado, velocidad, marcia, in marcia, stato, velocita,
    velocidade, em marcha, em producao, en produccion, in produzione, en production,
    draait, in bedrijf, snelheid, drift, i drift, hastighet, tilstand,
    praca, pracuje, stan, predkosc, chod, bezi, stav, rychlost, kaynti, nopeus, uzem, sebesseg, calisiyor, hiz, durum`),
  quality: list('quality, qual, status code, statuscode, opc quality, qualitat, qualite, calidad, qualita, q'),
  temperature: list(`
    temp, temperature, temps, tmp, t, tc, rtd, thermocouple, thermoelement, pt100, pt1000, sensor temp, thermometer,
    temperatur, temperaturen, temperaturer, temperatura, temperaturas, temperature, temperatuur, temperatury,
    teplota, lampotila, homerseklet, sicaklik, температура`),
  // Words that say nothing of the role and are not part of the zone's name.
  filler: list(`
    value, val, wert, valeur, valor, valore, waarde, verdi, varde, vaerdi, wartosc, hodnota, arvo, ertek, deger,
    signal, avg, mean, pid`),
  // Quantities that are not heater zones.
  other: list(`
    humidity, air humidity, rh, ah, relative humidity, feuchte, humidite, humedad, umidita, moisture, hygrometer,
    pressure, press, druck, pression, presion, pressione, druk, trykk, vacuum, cisnienie, tlak, paine, nyomas, basinc,
    current, amps, ampere, strom, courant, corriente, corrente, stroom, prad, proud, virta,
    voltage, volt, volts, spannung, tension, napiecie, napeti, flow, flow rate, volume flow, durchfluss, debit, caudal,
    portata, przeplyw, prutok, level, niveau, nivel, torque, drehmoment, couple, vibration, accelerometer, rms, energy,
    kwh, frequency, weight, count, counter, position, damper, valve, fan, wind, rain, solar, radiation, co2, nox, no2,
    error, anomaly, changepoint, annotation, label, comment, remark, id, index, no, nr, batch, recipe, operator, user,
    shift, alarm, event, message, fault, sequence, watermark, latitude, longitude,
    cool, cooling, kuhlung, kuehlung, refroidissement, raffreddamento, enfriamiento, koeling, chlodzenie, chlazeni,
    deviation, dev, hysteresis, band, high limit, low limit, limit`),
};

/** Headers of the columns of a long file: its tags, its values, their quality. Folded as {@link plainWords} folds. */
export const tagNames =
  /^(tag|tag ?name|tagname|name|point|point ?name|item|variable|var ?name|channel|signal|sensor|zone|parameter|series|metric|measurement|object|source|messstelle|kanal|variabele|etiqueta|punto|canal|voie|mesure|id|variabile|nome|nom|nombre|naam|navn|namn|bezeichnung|messpunkt|messkanal|grandeur|sonda|sensore|misura|nazwa|zmienna|nazev|velicina|nimi|nev|zona|strefa|sone|zon|heizzone|kanaal|tagg)$/;
export const valueNames =
  /^(value|val|wert|messwert|valeur|valor|valore|waarde|verdi|varde|vaerdi|wartosc|hodnota|arvo|ertek|deger|mesure|lettura|lectura|leitura|reading|data|y|vvalue|num(eric)? ?value|float ?value|average|avg)$/;
export const qualityNames =
  /^(quality|qual|q|status|state|opc ?quality|quality ?code|status ?code|qualitat|qualite|calidad|qualita|qualidade|kwaliteit|kvalitet|kvalita|jakosc|laatu|etat|estado|stato|statut|stan|good|valid|flag|flags)$/;

/** Folded, runs of anything that is neither letter nor digit as one blank. */
export function plainWords(text: string): string {
  return foldText(text)
    .replace(/[^\p{L}\p{N}%]+/gu, ' ')
    .trim();
}
