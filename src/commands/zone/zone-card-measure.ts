import type { Check } from '../../model/check.js';
import type { ZoneFinding } from '../../model/findings.js';
import { conditionText, expectedText, isComparable } from '../../report/sentences/expected.js';
import { driftedText, firstTask, whatToBring } from '../../report/sentences/next-step.js';
import { phrase, phraseFromText, type ShownUnit } from '../../report/text/phrase.js';
import { placeWords } from '../../report/text/words.js';
import { bullet, cardText, type Card } from './zone-card-parts.js';
import { wrapText } from '../terminal/text-width.js';

/** With these a fitter comes to a verdict; more would push the caution off the screen. Our own choice. */
const mostMeasured = 6;

/** What to do first, what to bring, and the values to hold a meter against, place by place. */
export function measureLines(card: Card): readonly string[] {
  const { zone, unit, width, colours, isWhyWanted } = card;
  const all = zone.checks.filter(({ kind, expected }) => kind === 'measure' && expected.some(isComparable));
  const shown = isWhyWanted ? all : all.slice(0, mostMeasured);
  const left = all.length - shown.length;
  const toDo =
    zone.status === 'healthy'
      ? []
      : [
          ...wrapText(`First: ${cardText(firstTask(zone), unit)} ${driftedText(zone)}`, width),
          ...wrapText(`Bring: ${whatToBring(zone).join('; ')}.`, width),
        ];
  return [
    '',
    ...toDo,
    ...(isWhyWanted ? prepareLines(zone, unit, width) : []),
    ...(shown.length > 0 ? wrapText('Measure, locked out unless it says power on', width).map(colours.bold) : []),
    ...placeLines(shown, unit, width),
    ...(left > 0 ? bullet(`and ${left} more, with --why`, width) : []),
  ];
}

function prepareLines({ checks }: ZoneFinding, unit: ShownUnit, width: number): readonly string[] {
  return checks
    .filter(({ kind }) => kind === 'prepare')
    .flatMap(({ says }) => wrapText(`Prepare: ${cardText(phraseFromText(says), unit)}`, width));
}

/** Each place is named once, and values that are the same at a later place are not written twice. */
function placeLines(checks: readonly Check[], unit: ShownUnit, width: number): readonly string[] {
  const told = new Map<string, Check['where']>();
  return checks.flatMap((check, i) => {
    const values = valueText(check, unit);
    const toldAt = told.get(values) ?? check.where;
    told.set(values, toldAt);
    const parts = [
      ...(check.where === checks[i - 1]?.where ? [] : [placeWords[check.where]]),
      ...(check.power === 'live' ? ['power on, authorised people only'] : []),
      ...howText(check),
    ];
    const same = toldAt === check.where ? values : `as ${lowerFirst(placeWords[toldAt])}`;
    return bullet([...parts, same].join(': '), width, `${i + 1}.`);
  });
}

/** Where the meter goes; without a pair what to do, unless the value itself says it. */
function howText({ between, says, expected }: Check): readonly string[] {
  if (between.length > 0) return [between.join('; ')];
  return expected.some(({ quantity }) => quantity === 'reading') ? [] : [says.split('. ')[0]!];
}

function valueText({ expected }: Check, unit: ShownUnit): string {
  return expected
    .filter(isComparable)
    .map((value) => cardText(phrase`${expectedText(value)} ${conditionText(value)}`, unit).trim())
    .join('; ');
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
