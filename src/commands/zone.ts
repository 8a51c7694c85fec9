import type { Command } from 'commander';
import type { Findings } from '../model/findings.js';
import { LogProblem } from '../model/problem.js';
import { addLogOptions, toAnalyseOptions, type LogOptions } from './log-options.js';
import { standardOutput } from './terminal/colour.js';

interface ZoneOptions extends LogOptions {
  readonly last?: string;
  readonly why?: boolean;
  readonly json?: boolean;
  readonly quiet?: boolean;
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
    .option('--fahrenheit', 'temperatures in °F')
    .option('--json', 'print what the findings hold of the zone')
    .option('--quiet', 'print the verdict only, on one line');
  addLogOptions(command)
    .addHelpText('after', '\nExample:\n  looselead zone "Front jaw" logs/ --last 7d --why\n')
    .action(async (name: string, paths: string[], options: ZoneOptions) => {
      const lastMs = options.last === undefined ? Infinity : spanMs(options.last);
      const findings = await findingsOf(paths, options);
      process.stdout.write(await output(name, findings, lastMs, options));
    });
}

async function output(name: string, findings: Findings, lastMs: number, options: ZoneOptions): Promise<string> {
  const { findZones } = await import('./zone-find.js');
  const zones = findZones(findings.zones, name);
  if (options.json) return `${JSON.stringify(zones.length === 1 ? zones[0] : zones, null, 2)}\n`;
  const { zoneCard, zoneLine } = await import('./zone-card.js');
  if (options.quiet) return zones.map(zoneLine).join('');
  const fromMs = Date.parse(findings.window.end) - lastMs;
  const unit = options.fahrenheit ? 'degF' : 'degC';
  const cardOptions = { fromMs, unit, isWhyWanted: options.why === true, terminal: standardOutput() } as const;
  return zones.map((zone) => zoneCard(zone, findings, cardOptions)).join('\n');
}

async function findingsOf(paths: readonly string[], options: ZoneOptions): Promise<Findings> {
  const [only] = paths;
  if (paths.length === 1 && only?.toLowerCase().endsWith('findings.json')) {
    const { readFindings } = await import('./read-findings.js');
    return readFindings(only);
  }
  const { analyse } = await import('../pipeline.js');
  return analyse([...paths], toAnalyseOptions(options));
}

const unitMs = { h: 3_600_000, d: 86_400_000, w: 7 * 86_400_000 } as const;

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
