import type { AlarmKind } from '../../model/alarm.js';

/**
 * Phrases that speak for one kind of alarm: whole words, folded; * stands for more letters. Of a table the first line that
 * holds a phrase decides, so the narrower meaning stands first. Languages by line: English, German, French, Italian,
 * Spanish, Portuguese, Dutch, Swedish, Norwegian and Danish, Polish, Czech, Finnish, Chinese and Japanese; then Turkish and
 * Finnish, Danish, Hungarian, Romanian, Czech and Slovak, Slovene and Croatian, Baltic, Russian, Ukrainian and Bulgarian,
 * Greek, Vietnamese and Indonesian, Chinese in both scripts, Japanese and Korean; then Lithuanian, Latvian, Estonian,
 * Bulgarian, Vietnamese, Indonesian, Thai, Arabic and Hebrew (these from memory).
 * Source: common practice; the page alarm-words.md says more.
 */
export interface AlarmWords {
  readonly kind: AlarmKind;
  readonly phrases: readonly string[];
}
