import { list } from '../../words/fold.js';
import type { AlarmWords } from './alarm-words.js';

/** What says by itself that the machine was stopped, or why. */
export const stopWords: readonly AlarmWords[] = [
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
      공압,
      masina sustojo, masina sustabdyta, dangtis atidarytas, nera medziagos, avarijas apstasanas, masina apstajas,
      nav materiala, hadastopp, kaitse avatud, luuk avatud, materjal otsas, masin seisab, masin peatatud,
      аварийно спиране, отворена врата, отворен капак, спряна машина, машината е спряна, dung may, mesin berhenti,
      bahan habis, *หยุดฉุกเฉิน*, *ประตูเปิด*, *เครื่องหยุด*, *วัสดุหมด*, توقف طارئ, ايقاف طوارئ, الباب مفتوح,
      توقف الماكينة, توقف الالة, نفاد المواد, עצירת חירום, דלת פתוחה, מגן פתוח, עצירת מכונה, חוסר חומר`),
  },
];
