import { list, phraseTest, wordsOf } from '../../words/fold.js';

/**
 * What people do at a machine and alarm logs note as well: log-ins, changes of recipe, product, set point or shift. Languages
 * as in alarm-words.ts, the first twelve and the large others. Source: common practice.
 */
const operatorWords = phraseTest(
  list(`
    login, log in, logged in, logon, log on, logged on, logout, log out, logged out, logoff, log off, logged off, user
    change*, user login, operator change*, password*, recipe change*, recipe load*, recipe select*, recipe download*, recipe
    sent, recipe saved, new recipe, product change*, product selected, batch start*, batch end*, batch change*, lot change*,
    set point change*, setpoint change*, parameter change*, value change*, mode change*, shift change*, shift start*, shift
    end*, operator comment, operator note, backup*, screenshot, report print*, report saved, language change*,
    angemeldet, abgemeldet, anmeldung, abmeldung, benutzerwechsel, benutzer an*, benutzer ab*, kennwort*, passwort*,
    rezeptwechsel, rezept gewechselt, rezept geladen, rezept gewahlt, rezept gewaehlt, rezept geandert, rezept geaendert,
    produktwechsel, sollwert geandert, sollwert geaendert, parameter geandert, parameter geaendert, schichtwechsel,
    betriebsart gewechselt, bedienereingriff*, charge gestartet, charge beendet,
    ouverture de session, fermeture de session, utilisateur connecte, utilisateur deconnecte, operateur connecte, operateur
    deconnecte, mot de passe, recette chargee, recette changee, changement de recette, changement recette, changement de
    produit, consigne modifiee, parametre modifie, changement d equipe,
    accesso utente, uscita utente, utente connesso, utente disconnesso, ricetta caricata, ricetta cambiata, cambio ricetta,
    cambio prodotto, setpoint modificato, parametro modificato, cambio turno,
    inicio de sesion, cierre de sesion, usuario conectado, usuario desconectado, contrasena, receta cargada, receta cambiada,
    cambio de receta, cambio de producto, consigna modificada, parametro modificado, cambio de turno,
    sessao iniciada, sessao encerrada, usuario entrou, usuario saiu, senha, receita carregada, troca de receita, troca de
    produto, setpoint alterado, parametro alterado, troca de turno,
    aangemeld, afgemeld, wachtwoord, recept geladen, recept gewijzigd, receptwissel, productwissel, setpoint gewijzigd,
    parameter gewijzigd, ploegwissel, ploegenwissel,
    inloggad, utloggad, inloggning, utloggning, losenord, receptbyte, recept laddat, produktbyte, borvarde andrat, skiftbyte,
    innlogget, utlogget, innlogging, utlogging, passord, oppskrift lastet, reseptbytte, resept lastet, produktbytte,
    settpunkt endret, skiftbytte, logget ind, logget ud, adgangskode, opskrift indlaest, opskrift skiftet, produktskift,
    setpunkt aendret, holdskifte,
    zalogowan*, wylogowan*, haslo, receptura zmieniona, receptura wczytana, zmiana receptury, zmiana produktu, zmiana nastawy,
    zmiana parametru, zmiana zmiany, prihlasen*, odhlasen*, heslo, zmena receptury, receptura nactena, zmena produktu, zmena
    parametru, stridani smen, kirjautu*, salasana, resepti ladattu, reseptin vaihto, tuotteen vaihto, vuoron vaihto,
    вход пользователя, выход пользователя, вход оператора, выход оператора, оператор вошел, оператор вышел, пароль, рецепт
    загружен, рецепт изменен, смена рецепта, смена продукта, уставка изменена, параметр изменен, смена оператора,
    登录, 登入, 登出, 注销, 密码, 密碼, 配方切换, 配方更改, 配方下载, 更换配方, 配方切換, ログイン, ログアウト, パスワード, レシピ変更,
    レシピ読込, 品種切替, 品種変更, 로그인, 로그아웃, 비밀번호, 레시피 변경, 품종 변경`),
);
/** Then it did not work, which somebody may have to look at. */
const failure = phraseTest(
  list(`fail*, error*, fault*, fehler*, defaut*, errore*, fallo*, falha*, fout*, feil*, fejl*, fel, blad*, chyba*, virhe*, ошибка*,
    失败, 失敗, 错误, エラー, 실패`),
);

/** Whether a text tells what somebody did and no alarm. Never throws. */
export function isOperatorAction(text: string): boolean {
  const words = wordsOf(text).join(' ');
  return operatorWords(words) && !failure(words);
}
