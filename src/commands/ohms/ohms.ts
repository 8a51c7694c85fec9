import type { Command } from 'commander';
import type { OhmsOptions } from './ohms-input.js';
import type { OhmsAnswer } from './ohms-reckon.js';
import { addOutputOptions, printAnswer, type OutputOptions } from '../output-options.js';
import { standardOutput } from '../terminal/colour.js';

/** The same answer three times: for the screen, on one line, and as plain data. */
export interface OhmsResult {
  readonly text: string;
  readonly line: string;
  readonly json: OhmsAnswer;
}

/**
 * Works out the pocket card: what a good sensor gives, and what a measured value says. Prints nothing.
 *
 * @param columns Width of the screen; lines stay within it, at most 80.
 * @throws LogProblem `bad-argument` with a sentence for what was typed wrong or lies off the tables.
 */
export async function runOhms(options: OhmsOptions, columns?: number): Promise<OhmsResult> {
  const { readRequest } = await import('./ohms-input.js');
  const { reckon } = await import('./ohms-reckon.js');
  const { cardLine, ohmsCardText } = await import('./ohms-card.js');
  const json = reckon(readRequest(options));
  return { text: ohmsCardText(json, columns), line: cardLine(json), json };
}

const examples = `
Examples:
  looselead ohms --sensor pt100 --at 21C
  looselead ohms --sensor pt100 --wires 2 --gauge 20 --length 10m --at 150C
  looselead ohms --sensor pt100 --measured 111.3 --room 21C
  looselead ohms --sensor "type K" --at 20C..200C --step 20C --reference 25C
`;

/** `looselead ohms`: the technician's pocket card. */
export function registerOhms(program: Command): void {
  const command = program
    .command('ohms')
    .description('tell the ohms, mV or mA to expect from a sensor, or what a measured value says')
    .option('--sensor <type>', 'pt100, pt1000, ni120, cu10, tc-j, tc-k, tc-t, tc-e, ma-4-20 …')
    .option('--at <temperature>', '21C, 70F, 294K; a range 20C..200C or a list "20C; 100C" gives a table')
    .option('--step <degrees>', 'step of a range')
    .option('--class <class>', 'tolerance: AA, A, B, C, or standard, special for thermocouples')
    .option('--wires <count>', '2, 3 or 4')
    .option('--gauge <awg>', 'copper lead by American gauge')
    .option('--mm2 <area>', 'copper lead by cross-section')
    .option('--length <length>', 'length of the lead one way: 10m or 30ft')
    .option('--lead-temperature <temperature>', 'temperature of the lead, 20C unless given')
    .option('--reference <temperature>', 'thermocouples: temperature of the terminals')
    .option('--span <range>', 'transmitters: temperatures at 4 and 20 mA, 0C..200C')
    .option('--measured <value>', 'what the meter shows: 112.3, 1.1k, -0.5mV, 12mA, OL')
    .option('--room <temperature>', 'temperature of the cold machine, to compare with');
  addOutputOptions(command, { json: 'print the answer as JSON', quiet: 'print the values only, one on a line' })
    .addHelpText('after', examples)
    .action(async (options: OhmsOptions & OutputOptions) => {
      const { text, line, json } = await runOhms(options, standardOutput().columns);
      await printAnswer(options, { json: () => json, quiet: () => line, text: () => text });
    });
}
