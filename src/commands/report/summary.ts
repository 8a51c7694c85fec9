import type { Findings, ZoneFinding } from '../../model/findings.js';
import { levelChangeSays } from '../../report/sentences/level-changes.js';
import { standingOf } from '../../report/sentences/standing.js';
import { needText } from '../../report/sentences/summary.js';
import { rankedCauses } from '../../report/sentences/verdict.js';
import { zoneOnMachine } from '../../report/text/names.js';
import { counted, percentText } from '../../report/text/numbers.js';
import { causeWords } from '../../report/text/words.js';
import { safeText } from '../terminal/text-width.js';

/** Named up to this many a kind; the report has them all. */
const mostNamed = 12;

/** What `report` prints: who needs someone, and where the report is. */
export function summaryText(findings: Findings, files: { htmlFile: string; jsonFile: string }): string {
  const { zones, problems } = findings;
  const of = (standing: string): readonly ZoneFinding[] => zones.filter((zone) => standingOf(zone) === standing);
  const [faulty, watch, fixed] = [of('faulty'), of('watch'), of('fixed')];
  const untold = of('insufficient-data').length;
  return [
    zones.length === 0
      ? 'No zone was found; "looselead preview" shows what each file was taken for.'
      : `${needText(faulty.length, zones.length)}${faulty.length > 0 ? ':' : '.'}`,
    ...zoneLines(faulty),
    ...(watch.length > 0 ? [`${watch.length} to keep an eye on:`, ...zoneLines(watch)] : []),
    ...(fixed.length > 0 ? [`${fixed.length} put right since; confirm what was done:`, ...zoneLines(fixed)] : []),
    ...(untold > 0 ? [`${untold} could not be judged; the report says why.`] : []),
    ...(findings.history?.levelChanges?.length ? levelChangeSays(findings.history) : []),
    ...(problems.length > 0
      ? [`${counted(problems.length, 'remark')} on the logs; see "How far to trust this" in the report.`]
      : []),
    `Report: ${files.htmlFile}`,
    `Findings: ${files.jsonFile}`,
    '',
  ]
    .join('\n')
    .replaceAll('\u00A0', ' ');
}

function zoneLines(zones: readonly ZoneFinding[]): readonly string[] {
  const lines = zones
    .slice(0, mostNamed)
    .map((zone) => `  ${zone.rank}. ${safeText(zoneOnMachine(zone))}: ${oddsText(zone)}`);
  return zones.length > mostNamed ? [...lines, `  and ${zones.length - mostNamed} more`] : lines;
}

/** A cause below this is not worth a word here. */
const spokenShare = 0.05;

/** "sensor 71 %, wiring 25 %": causes worth naming, likeliest first. */
function oddsText(zone: ZoneFinding): string {
  return rankedCauses(zone)
    .filter(([, share]) => share >= spokenShare)
    .map(([cause, share]) => `${causeWords[cause]} ${percentText(share)}`)
    .join(', ');
}
