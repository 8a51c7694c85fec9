import type { HistoryFindings, LevelChange } from '../../model/history-findings.js';
import { minutesText, numberText } from '../text/numbers.js';
import { weekText } from '../text/weeks.js';

/** With fewer weeks the ranks cannot add up to a change (k = ½, h = 4: about eight at the least). */
const fewestWeeks = 8;

const measureWords: Readonly<Record<LevelChange['measure'], string>> = {
  alarms: 'Alarms',
  zoneFaultMinutes: 'Minutes lost to heater zones',
};

/** Whether the plant got better or worse for good, a sentence for each measure that did. */
export function levelChangeSays({ weeks, levelChanges = [] }: HistoryFindings): readonly string[] {
  if (weeks.length < fewestWeeks) return [];
  if (levelChanges.length > 0) return levelChanges.map(changeText);
  return [
    'Neither the alarms nor the minutes lost to heater zones stand at another level than before: single weeks are high or low, none of it lasts.',
  ];
}

function changeText({ measure, isHigher, sinceWeek, perWeekBefore, perWeekSince, byChanceInWeeks }: LevelChange) {
  const amount = measure === 'alarms' ? (count: number) => numberText(count) : minutesText;
  const place = `${isHigher ? 'higher' : 'lower'} since ${inSentence(weekText(sinceWeek))}`;
  const levels = `about ${amount(perWeekSince)} a week, before ${amount(perWeekBefore)}`;
  return `${measureWords[measure]} are ${place}: ${levels}. Chance alone gives such a change once in ${numberText(byChanceInWeeks)} weeks.`;
}

/** "Week 37, from 7 Sep" → "week 37 (from 7 Sep)". */
function inSentence(week: string): string {
  return week.replace(/^Week (\d+), (.*)$/, 'week $1 ($2)');
}
