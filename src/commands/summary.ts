import type { Findings, ZoneFinding } from '../model/findings.js';
import { causes } from '../model/cause.js';

/** What `report` prints: who needs someone, and where the report is. */
export function summaryText(findings: Findings, files: { htmlFile: string; jsonFile: string }): string {
  const needy = findings.zones.filter(({ status }) => status === 'faulty' || status === 'watch');
  const unsure = findings.zones.filter(({ status }) => status === 'insufficient-data').length;
  const head =
    needy.length === 0
      ? `None of ${findings.zones.length} zones needs a fitter.`
      : `${needy.length} of ${findings.zones.length} zones ${needy.length === 1 ? 'needs' : 'need'} a fitter:`;
  const lines = needy.map((zone) => `  ${zone.rank}. ${zone.zone}: ${oddsText(zone)}`);
  const problems = findings.problems.length;
  return [
    head,
    ...lines,
    ...(unsure > 0 ? [`${unsure} could not be judged; the report says why.`] : []),
    ...(problems > 0 ? [`${problems} ${problems === 1 ? 'remark' : 'remarks'} on the input; see the report.`] : []),
    `Report: ${files.htmlFile}`,
    `Findings: ${files.jsonFile}`,
    '',
  ].join('\n');
}

/** "sensor 71 %, wiring 25 %": causes worth naming, likeliest first. */
function oddsText({ probabilities }: ZoneFinding): string {
  return causes
    .filter((cause) => cause !== 'none' && probabilities[cause] >= 0.05)
    .sort((a, b) => probabilities[b] - probabilities[a])
    .map((cause) => `${cause} ${Math.round(100 * probabilities[cause])} %`)
    .join(', ');
}
