import { Command, CommanderError } from 'commander';
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { reportFailure } from '../../src/commands/failure.js';
import { registerOhms, runOhms } from '../../src/commands/ohms/ohms.js';
import type { OhmsOptions } from '../../src/commands/ohms/ohms-input.js';
import { LogProblem } from '../../src/model/problem.js';

const ask = async (options: OhmsOptions) => (await runOhms(options)).json;
const card = async (options: OhmsOptions, columns?: number) => (await runOhms(options, columns)).text;
/** The sentence that bad input gets. */
async function problemOf(options: OhmsOptions): Promise<string> {
  const error = await runOhms(options).catch((caught: unknown) => caught);
  if (!(error instanceof LogProblem)) throw new Error(`no LogProblem but ${String(error)}`);
  expect(error.code).toBe('bad-argument');
  return error.message;
}

describe('what to expect', () => {
  // IEC 60751 table and class B: 107.79 Ω at 20 °C; 0.425 °C and 0.165 Ω at 25 °C.
  test('Pt100 at 20 and 25 °C with the band of class B', async () => {
    const { expected } = await ask({ sensor: 'Pt100', at: '20C; 25C' });
    expect(expected.map((row) => row.expected.toFixed(2))).toEqual(['107.79', '109.73']);
    expect(expected[1]!.toleranceDegC).toBeCloseTo(0.425, 9);
    expect((expected[1]!.high! - expected[1]!.low!) / 2).toBeCloseTo(0.165, 3);
  });

  test.each([
    ['70F', 21.1111],
    ['294.15K', 21],
    ['21', 21],
    ['21 °C', 21],
    ['−40C', -40],
    ['-40F', -40],
  ])('%s is %d °C', async (at, degC) => {
    expect((await ask({ sensor: 'pt100', at })).expected[0]!.atDegC).toBeCloseTo(degC, 4);
  });

  test.each([
    ['20C..200C', '20C', 10, 20, 200],
    ['20..200C', undefined, 10, 20, 200],
    ['68F..212F', '36F', 5, 20, 100],
    ['20C..50C', '20', 3, 20, 50],
  ])('the range %s', async (at, step, rows, first, last) => {
    const { expected } = await ask({ sensor: 'pt100', at, step });
    expect(expected).toHaveLength(rows);
    expect(expected[0]!.atDegC).toBeCloseTo(first, 9);
    expect(expected.at(-1)!.atDegC).toBeCloseTo(last, 9);
  });

  test('a range in °F without a step gets round °F', async () => {
    const { expected } = await ask({ sensor: 'pt100', at: '0F..400F' });
    for (const row of expected) expect(row.atDegF % 10).toBeCloseTo(0, 6);
  });

  // NIST: K at 200 °C 8.138 mV, at 25 °C 1.000 mV.
  test('type K with its reference', async () => {
    const { expected, referenceDegC, notes } = await ask({ sensor: 'type K', at: '200C', reference: '25C' });
    expect(expected[0]!.expected).toBeCloseTo(8.138 - 1.0, 3);
    expect(referenceDegC).toBe(25);
    expect(notes).toEqual([]);
    expect((await ask({ sensor: 'K', at: '200C' })).notes.join()).toMatch(/assumed/);
  });

  // HyperPhysics wire table, AWG 20: 10.15 Ω per 1000 ft; +1.76 °C for 10 m of 2-wire cable at 100 °C, computed.
  test('lead resistance, by gauge and feet, and by area and metres', async () => {
    const { lead } = await ask({ sensor: 'pt100', at: '100C', wires: '2', gauge: '20', length: '10m' });
    expect(lead!.readingOffsetDegC).toBeCloseTo(1.76, 2);
    const feet = await ask({ sensor: 'pt100', gauge: 'AWG 20', length: '1000 ft' });
    expect(feet.lead!.leadOhm).toBeCloseTo(10.15, 2);
    expect(feet.lead!.readingOffsetDegC).toBeCloseTo(0, 6); // 3 wires cancel equal leads
    const area = await ask({ sensor: 'pt100', mm2: '1 mm²', length: '100m', leadTemperature: '20C' });
    expect(area.lead!.leadOhm).toBeCloseTo(1.7241, 6);
  });

  test('4–20 mA with a span', async () => {
    const { expected } = await ask({ sensor: 'ma-4-20', at: '100C', span: '0..200C' });
    expect(expected[0]).toMatchObject({ signal: 'mA', expected: 12 });
  });

  test('without a temperature it says what it assumes', async () => {
    expect((await ask({ sensor: 'pt100' })).notes).toEqual(['No temperature is given: a room of 21 °C is assumed.']);
  });

  test('a class that does not reach that far leaves the band out and says so', async () => {
    const { expected, notes } = await ask({ sensor: 'pt100', at: '700C' });
    expect(expected[0]).toMatchObject({ low: null, high: null, toleranceDegC: null });
    expect(notes).toEqual(['Class B holds only from −196 to 600 °C.']);
  });
});

describe('what was measured', () => {
  test('8 °C high for a room at 21 °C is 3.1 Ω too much', async () => {
    const { measured } = await ask({ sensor: 'pt100', measured: '111.285', room: '21C' });
    expect(measured).toMatchObject({
      verdict: 'high',
      says: 'Reads 8.0 °C high for a room at 21.0 °C: 3.1 Ω too much.',
    });
    expect(measured!.readingDegC).toBeCloseTo(29, 2);
    expect(measured!.explanations[0]).toMatchObject({ reason: 'fits-both-leads', points: 'wiring' });
  });

  test('112.3 Ω alone is a temperature (inverse of the IEC 60751 equation, by hand: 31.6 °C)', async () => {
    const { measured } = await ask({ sensor: 'pt100', measured: '112.3' });
    expect(measured!.verdict).toBe('temperature');
    expect(measured!.says).toMatch(/^That is 31\.6 °C/);
  });

  test.each([
    ['pt100', 'OL', 'open'],
    ['pt100', 'open', 'open'],
    ['pt100', '2Mohm', 'open'],
    ['pt100', '0.4', 'short'],
    ['pt100', '0.4 Ω', 'short'],
    ['pt1000', '1.08k', 'fits'],
    ['pt100', '108.2', 'fits'],
    ['pt100', '105.9', 'low'],
    ['pt100', '1082', 'off-table'],
    ['pt100', '15', 'off-table'],
    ['tc-k', '0mV', 'fits'],
    ['tc-k', 'OL', 'open'],
    ['tc-k', '2Mohm', 'open'],
    ['ma-4-20', '3.5mA', 'failure-signal'],
    ['ma-4-20', '21', 'failure-signal'],
    ['ma-4-20', '0', 'open'],
  ])('%s showing %s in a room at 21 °C: %s', async (sensor, measured, verdict) => {
    expect((await ask({ sensor, measured, room: '21C' })).measured!.verdict).toBe(verdict);
  });

  test('names the sensor that is fitted instead', async () => {
    const { measured } = await ask({ sensor: 'pt100', measured: '1082', room: '21C' });
    expect(measured!.explanations[0]!.says).toMatch(/^That is what Pt1000 gives at 21\.0 °C/);
  });

  test('known cable is taken off before the table is read', async () => {
    // AWG 20: 10.15 Ω per 1000 ft (HyperPhysics wire table), so 2.0 Ω in a pair of 30 m; 108.18 Ω at 21 °C.
    const lead = { gauge: '20', length: '30m' };
    const known = await ask({ sensor: 'pt100', measured: '110.18', room: '21C', ...lead });
    expect(known.measured).toMatchObject({ verdict: 'fits' });
    expect(known.measured!.cableOhm).toBeCloseTo(2.0, 2);
    expect((await ask({ sensor: 'pt100', measured: '110.18', room: '21C' })).measured!.verdict).toBe('high');
  });

  test('class B and 2 °C for a room nobody knows better (common practice) still fit, a little more does not', async () => {
    // IEC 60751 class B at 21 °C: 0.405 °C; together 2.405 °C, 0.933 Ω by 0.388 Ω/°C.
    const verdict = async (ohm: number) =>
      (await ask({ sensor: 'pt100', measured: ohm.toFixed(2), room: '21C' })).measured!.verdict;
    expect(await verdict(108.18 + 0.92)).toBe('fits');
    expect(await verdict(108.18 + 0.95)).toBe('high');
    expect(await verdict(108.18 - 0.92)).toBe('fits');
    expect(await verdict(108.18 - 0.95)).toBe('low');
  });

  test('a 3-wire input is told apart from a meter', async () => {
    const high = await ask({ sensor: 'pt100', measured: '111.3', room: '21C' });
    expect(high.notes.join()).toMatch(/3-wire input shows only lead 1 less lead 2/);
    const four = await ask({ sensor: 'pt100', measured: '111.3', room: '21C', wires: '4' });
    expect(four.notes.join()).toMatch(/do not show on a 4-wire input/);
    const low = await ask({ sensor: 'pt100', measured: '105.9', room: '21C' });
    expect(low.measured!.explanations.filter((one) => one.sensible)[0]!.reason).toBe('fits-leak');
    expect(low.measured!.explanations.at(-1)!.says).toMatch(/cannot make a meter read low/);
  });

  test('reversed thermocouple leads', async () => {
    const { measured } = await ask({ sensor: 'J', at: '150C', reference: '25C', measured: '-6.73mV' });
    expect(measured!.explanations[0]!.reason).toBe('leads-reversed');
  });
});

describe('the card', () => {
  const questions: OhmsOptions[] = [
    { sensor: 'pt100', at: '21C' },
    { sensor: 'pt100', at: '20C..200C' },
    { sensor: 'pt100', at: '150C', wires: '2', gauge: '20', length: '10m' },
    { sensor: 'pt100', measured: '111.3', room: '21C' },
    { sensor: 'pt100', measured: '1082', room: '21C' },
    { sensor: 'type K', at: '20C..200C', step: '20C', reference: '25C' },
    { sensor: 'tc-j', at: '150C', reference: '25C', measured: '-6.73' },
    { sensor: 'ma-4-20', at: '21C', span: '0C..200C' },
    { sensor: 'ni120', measured: 'OL' },
  ];

  test.each(questions.map((question) => [JSON.stringify(question), question] as const))(
    '%s: no line too wide, one screen, the caution near the top',
    async (_, question) => {
      for (const columns of [40, 63, 80, 200]) {
        const lines = (await card(question, columns)).split('\n');
        const widest = Math.max(...lines.map((line) => line.length));
        expect(widest, `${columns} columns`).toBeLessThanOrEqual(Math.min(columns, 80));
        if (columns >= 80) expect(lines.length - 1).toBeLessThanOrEqual(24);
      }
      const text = await card(question);
      expect(text.split('\n').slice(0, 3).join(' ').replace(/\s+/g, ' ')).toMatch(
        /Authorised people only: lock out, tag/,
      );
      expect(text).not.toMatch(/NaN|undefined|null|unknown/);
      expect(text.endsWith('.\n')).toBe(true);
    },
  );

  test('says the numbers that JSON holds', async () => {
    const { text, json } = await runOhms({ sensor: 'pt100', at: '21C' });
    expect(text).toContain(`${json.expected[0]!.expected.toFixed(2)} Ω`);
    expect(text).toContain('108.18 Ω');
    expect(JSON.parse(JSON.stringify(json))).toEqual(json);
  });
});

describe('bad input gets a sentence that says what to do', () => {
  test.each<[OhmsOptions, RegExp]>([
    [{}, /No sensor type is given\. Add --sensor/],
    [{ sensor: 'pt10' }, /"pt10" is no sensor type known here\. Known are pt100/],
    [{ sensor: 'pt100', at: 'warm' }, /--at "warm" is no temperature\. Write 21C/],
    [{ sensor: 'pt100', at: '' }, /no temperature/],
    [{ sensor: 'pt100', at: '21,5C' }, /comma between digits could mean two things/],
    [{ sensor: 'pt100', at: '1000C' }, /1000\.0 °C is above 850 °C/],
    [{ sensor: 'pt100', at: '-300C' }, /below absolute zero/],
    [{ sensor: 'pt100', at: '200C..20C' }, /does not rise/],
    [{ sensor: 'pt100', at: '0C..800C', step: '0.001C' }, /rows\. Take a larger --step/],
    [{ sensor: 'pt100', at: '0C..800C', step: '0' }, /is no step/],
    [{ sensor: 'pt100', at: '0C..10C..20C' }, /no temperature/],
    [{ sensor: 'pt100', at: '21C', step: '1C' }, /--step needs a range/],
    [{ sensor: 'pt100', at: '21C', class: 'Z' }, /no tolerance class known here/],
    [{ sensor: 'tc-k', at: '21C', class: 'B' }, /No table of tolerances named B is held for Thermocouple type K/],
    [{ sensor: 'pt100', wires: '5' }, /no number of wires/],
    [{ sensor: 'pt100', gauge: '20' }, /thickness and its length/],
    [{ sensor: 'pt100', length: '10m' }, /thickness and its length/],
    [{ sensor: 'pt100', gauge: '20', mm2: '0.5', length: '10m' }, /Both --gauge and --mm2/],
    [{ sensor: 'pt100', gauge: 'thin', length: '10m' }, /"thin" is no wire known here/],
    [{ sensor: 'pt100', gauge: '50', length: '10m' }, /AWG number from 0000 to 40/],
    [{ sensor: 'pt100', gauge: '20', length: 'far' }, /"far" is no length/],
    [{ sensor: 'pt100', measured: 'lots' }, /"lots" is no measurement/],
    [{ sensor: 'pt100', measured: '112,3' }, /Use a point for decimals/],
    [{ sensor: 'pt100', measured: '5mV' }, /Pt100 gives ohms, not mV/],
    [{ sensor: 'tc-k', measured: '12 ohm' }, /Thermocouple type K gives mV, not ohms/],
    [{ sensor: 'pt100', measured: '-5' }, /cannot be below 0 Ω/],
    [{ sensor: 'pt100', measured: '110', at: '20C..30C' }, /goes with one temperature/],
    [{ sensor: 'ma-4-20', at: '20C' }, /needs its span/],
    [{ sensor: 'ma-4-20', at: '20C', span: '5C' }, /is no span/],
    [{ sensor: 'ma-4-20', at: '20C', span: '5C..5C' }, /are the same/],
    [{ sensor: 'ma-4-20', at: '300C', span: '0C..200C' }, /outside the transmitter's span/],
    [{ sensor: '__proto__', at: '20C' }, /no sensor type known/],
    [{ sensor: 'pt100', measured: '5 constructor' }, /no measurement/],
  ])('%j', async (options, sentence) => {
    const message = await problemOf(options);
    expect(message).toMatch(sentence);
    expect(message).toMatch(/\.$/);
  });

  test('whatever is typed: a card or a sentence, never a crash', async () => {
    const word = fc.oneof(
      fc.constantFrom(
        'pt100',
        'K',
        'ma-4-20',
        '21C',
        '-40F',
        '0C..200C',
        '20C; 30C',
        'OL',
        '1.1k',
        '5mV',
        '10m',
        '3',
        'B',
        '..',
        '',
      ),
      fc.string({ maxLength: 12 }),
      fc.double().map((value) => `${value}C`),
      fc.integer({ min: -400, max: 2000 }).map((value) => `${value}C`),
    );
    const sensor = fc.constantFrom('pt100', 'pt1000-3916', 'ni120', 'cu10', 'J', 'T', 'ma-4-20');
    // Mostly what fits the option, so that cards are met as well as sentences.
    const like = (...fitting: string[]) =>
      fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...fitting) }, { weight: 1, arbitrary: word });
    const temperature = ['21C', '70F', '-40C', '294K', '150', '399C'];
    const options = fc.record(
      {
        at: like(...temperature, '0C..200C', '20C; 30C', '-20F..300F'),
        class: like('A', 'B', 'standard', 'ASTM A'),
        wires: like('2', '3', '4'),
        gauge: like('20', '2/0'),
        length: like('10m', '3000ft', '0m'),
        leadTemperature: like(...temperature),
        reference: like(...temperature),
        measured: like('OL', '0', '108', '1.1k', '-3', '5mV', '12mA', '3.5', '9 Ω'),
        room: like(...temperature),
        span: like('0C..200C', '200..0C'),
      },
      { requiredKeys: [] },
    );
    let cards = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.oneof({ weight: 9, arbitrary: sensor }, { weight: 1, arbitrary: word }),
        options,
        fc.integer({ min: 0, max: 120 }),
        async (id, rest, columns) => {
          const answer = await runOhms({ sensor: id, ...rest }, columns).catch((caught: unknown) => caught);
          if (answer instanceof LogProblem) {
            expect(answer.message).toMatch(/\.$/);
            return;
          }
          const { text } = answer as { text: string };
          cards++;
          expect(text).not.toMatch(/NaN|undefined|unknown/);
          expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(Math.max(columns, 40));
        },
      ),
      { seed: 2021, numRuns: 3000 },
    );
    expect(cards).toBeGreaterThan(100); // the seed gives 172; far fewer would mean that only sentences were tried
  });

  test('a long argument does not flood the sentence', async () => {
    expect((await problemOf({ sensor: 'x'.repeat(10_000) })).length).toBeLessThan(300);
  });
});

describe('on the command line', () => {
  afterEach(() => vi.restoreAllMocks());

  /** Runs it as cli.ts does; gives what was printed and the exit code. */
  async function run(...args: string[]): Promise<{ out: string; err: string; code: number }> {
    const said = { out: '', err: '' };
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => ((said.out += String(text)), true));
    vi.spyOn(process.stderr, 'write').mockImplementation((text) => ((said.err += String(text)), true));
    const program = new Command('looselead').exitOverride();
    registerOhms(program);
    const code = await program.parseAsync(['node', 'looselead', 'ohms', ...args]).then(
      () => 0,
      (error: unknown) => reportFailure(error),
    );
    return { ...said, code };
  }

  test('prints the card', async () => {
    const { out, err, code } = await run('--sensor', 'pt100', '--at', '21C');
    expect(code).toBe(0);
    expect(out).toMatch(/^Pt100, 3-wire, class B\n/);
    expect(err).toBe('');
  });

  test('prints JSON', async () => {
    const { out } = await run('--sensor', 'pt100', '--at', '21C', '--json');
    expect(JSON.parse(out)).toMatchObject({ schemaVersion: 1, sensor: { id: 'pt100' } });
  });

  test('takes values that begin with a minus', async () => {
    expect((await run('--sensor', 'tc-j', '--measured', '-6.73', '--at', '-40C')).code).toBe(0);
  });

  test('bad input: a sentence, exit 2, nothing on stdout', async () => {
    const { out, err, code } = await run('--sensor', 'pt100', '--measured', '5mV');
    expect({ out, code }).toEqual({ out: '', code: 2 });
    expect(err).toBe('looselead: Pt100 gives ohms, not mV. Correct --measured or --sensor.\n');
  });

  test('an unknown option: exit 2 and no stack', async () => {
    const { err, code } = await run('--senser', 'pt100');
    expect(code).toBe(2);
    expect(err).toMatch(/unknown option '--senser'/);
    expect(err).not.toMatch(/\n\s+at /);
  });

  test('help is an exit of 0', async () => {
    vi.spyOn(process.stdout, 'write').mockImplementation(() => true);
    const program = new Command('looselead').exitOverride();
    registerOhms(program);
    const error = await program.parseAsync(['node', 'looselead', 'ohms', '--help']).catch((caught: unknown) => caught);
    expect(error).toBeInstanceOf(CommanderError);
    expect((error as CommanderError).exitCode).toBe(0);
  });
});
