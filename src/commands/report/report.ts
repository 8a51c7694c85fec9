import { join } from 'node:path';
import type { Command } from 'commander';
import type { WholeFile } from '../../files/write-whole.js';
import type { Findings, ZoneStatus } from '../../model/findings.js';
import { addLogOptions, toAnalyseOptions, type LogOptions } from '../log-options.js';
import { addQuietOption, type OutputOptions } from '../output-options.js';
import type { RunResult } from '../run-result.js';
import { letGoOfAnalysis } from './let-go.js';

interface ReportOptions extends LogOptions, Pick<OutputOptions, 'quiet'> {
  readonly out?: string;
  readonly json?: string;
  readonly html?: string;
  readonly csv?: string;
  readonly history?: string;
  readonly failOn?: ZoneStatus;
}

/** `looselead report PATH...`: the main job, from files to findings.json and report.html. */
export function registerReport(program: Command, result: RunResult): void {
  const command = program
    .command('report')
    .description('read logs and write findings.json and a report to open in a browser')
    .argument('<path...>', 'log files or folders')
    .option('--out <folder>', 'where findings.json and report.html go', 'reports')
    .option('--json <file>', 'write the findings here instead')
    .option('--html <file>', 'write the report here instead')
    .option('--csv <file>', 'also write one line per zone for a work-order system')
    .option('--history <folder>', 'keep the findings there and compare with the weeks before');
  const failOn = command.createOption(
    '--fail-on <status>',
    'exit with 1 when a zone is faulty now; watch includes faulty',
  );
  command.addOption(failOn.choices(['faulty', 'watch']));
  addQuietOption(command, 'print nothing but problems');
  addLogOptions(command)
    .addHelpText('after', '\nExample:\n  looselead report logs/ --out reports/week-37\n')
    .action(async (paths: string[], options: ReportOptions) => {
      const findings = await run(paths, options);
      if (options.failOn && reaches(findings, options.failOn)) result.needsAttention = true;
    });
}

async function run(paths: string[], options: ReportOptions): Promise<Findings> {
  const { analyse } = await import('../../pipeline.js');
  const { renderReport } = await import('../../report/render-report.js');
  const { writeWhole } = await import('../../files/write-whole.js');
  const { jsonPieces } = await import('../../files/json-pieces.js');
  const findings = await analyse(paths, { ...toAnalyseOptions(options), ...optionalHistory(options) });
  letGoOfAnalysis();
  const folder = options.out ?? 'reports';
  const jsonFile = options.json ?? join(folder, 'findings.json');
  const htmlFile = options.html ?? join(folder, 'report.html');
  await writeWhole(
    { file: jsonFile, content: jsonPieces(findings) },
    { file: htmlFile, content: await renderReport(findings) },
    ...(await csvOf(findings, options.csv)),
  );
  if (!options.quiet) {
    const { summaryText } = await import('./summary.js');
    process.stdout.write(summaryText(findings, { htmlFile, jsonFile }));
  }
  return findings;
}

async function csvOf(findings: Findings, file: string | undefined): Promise<WholeFile[]> {
  if (file === undefined) return [];
  const { findingsCsv } = await import('../../report/findings-csv.js');
  return [{ file, content: findingsCsv(findings) }];
}

function optionalHistory(options: ReportOptions): { historyFolder?: string } {
  return options.history === undefined ? {} : { historyFolder: options.history };
}

/** A fault that was put right needs no fitter, so it holds up no script either; the report still asks to confirm it. */
function reaches(findings: Findings, status: ZoneStatus): boolean {
  const counted: ZoneStatus[] = status === 'watch' ? ['watch', 'faulty'] : [status];
  return findings.zones.some((zone) => zone.fixed === null && counted.includes(zone.status));
}
