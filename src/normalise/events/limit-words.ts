import { list } from '../../words/fold.js';
import type { AlarmWords } from './alarm-words.js';

/** What says by itself that a temperature is beyond a limit. */
export const limitWords: readonly AlarmWords[] = [
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
      온도상한, 온도 상한, 온도높음,
      temperatura per auksta, parak augsta temperatura, nhiet do qua cao, suhu terlalu tinggi, temperatur tinggi,
      *อุณหภูมิสูง*, ارتفاع درجة الحرارة, ارتفاع الحرارة, درجة حرارة عالية, حرارة عالية, درجة حرارة مرتفعة,
      حرارة مرتفعة, טמפרטורה גבוהה, התחממות יתר`),
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
      저온, 온도하한, 온도 하한, 온도낮음,
      temperatura per zema, parak zema temperatura, твърде ниска температура, nhiet do qua thap, suhu terlalu rendah,
      temperatur rendah, *อุณหภูมิต่ำ*, انخفاض درجة الحرارة, انخفاض الحرارة, درجة حرارة منخفضة, حرارة منخفضة,
      טמפרטורה נמוכה`),
  },
];
