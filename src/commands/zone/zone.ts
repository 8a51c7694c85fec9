import type { Command } from 'commander';
import type { Findings } from '../../model/findings.js';
import { LogProblem } from '../../model/problem.js';
import { HOUR_MS, DAY_MS } from '../../model/time-units.js';
import { addLogOptions, toAnalyseOptions, type LogOptions } from '../log-options.js';
import { addOutputOptions, printAnswer, type OutputOptions } from '../output-options.js';
import { readOrAnalyse } from '../read-findings.js';
import { standardOutput } from '../terminal/colour.js';

interface ZoneOptions extends LogOptions, OutputOptions {
  readonly last?: string;
  readonly why?: boolean;
  readonly fahrenheit?: boolean;
}

/** `looselead zone NAME PATH...`: one zone on one screen, for whoever goes to the machine. */
export function registerZone(program: Command): void {
  const command = program
    .command('zone')
    .description('show one zone on one screen: verdict, last faults, what to bring and measure')
    .argument('<name>', 'the zone as the logs name it; words of its name and machine are enough')
    .argument('<path...>', 'log files or folders, or a saved findings.json')
    .option('--last <time>', 'show only the last part of the window, such as 36h, 30d or 2w')
    .option('--why', 'show the sum behind the verdict')
    .option('--fahrenheit', 'temperatures in °F');
  addOutputOptions(command, {
    json: 'print what the findings hold of the zone',
    quiet: 'print the verdict only, on one line',
  });
  addLogOptions(command)
    .addHelpText('after', '\nExample:\n  looselead zone "Front jaw" logs/ --last 7d --why\n')
    .action(async (name: string, paths: string[], options: ZoneOptions) => {
      const lastMs = options.last === undefined ? Infinity : spanMs(options.last);
      const findings = await readOrAnalyse(paths, toAnalyseOptions(options));
      await answer(name, findings, lastMs, options);
    });
}

async function answer(name: string, findings: Findings, lastMs: number, options: ZoneOptions): Promise<void> {
  const { findZones } = await import('./zone-find.js');
  const { zoneCard, zoneLine } = await import('./zone-card.js');
  const zones = findZones(findings.zones, name);
  const fromMs = Date.parse(findings.window.end) - lastMs;
  const unit = options.fahrenheit ? 'degF' : 'degC';
  const cardOptions = { fromMs, unit, isWhyWanted: options.why === true, terminal: standardOutput() } as const;
  await printAnswer(options, {
    json: () => (zones.length === 1 ? zones[0] : zones),
    quiet: () => zones.map(zoneLine).join(''),
    text: () => zones.map((zone) => zoneCard(zone, findings, cardOptions)).join('\n'),
  });
}

const unitMs = { h: HOUR_MS, d: DAY_MS, w: 7 * DAY_MS } as const;

/** "36h", "30d", "2w" as ms. @throws LogProblem 'bad-argument' for anything else. */
export function spanMs(span: string): number {
  const found = /^(\d+(?:\.\d+)?) *([hdw])$/i.exec(span.trim());
  if (!found || Number(found[1]) === 0) {
    throw new LogProblem(
      'bad-argument',
      undefined,
      `"${span}" is not a length of time.`,
      'Write it as 36h, 30d or 2w.',
    );
  }
  return Number(found[1]) * unitMs[found[2]!.toLowerCase() as keyof typeof unitMs];
}
