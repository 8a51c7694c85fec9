import { Command } from 'commander';
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { completionScript } from '../../src/commands/completion.js';
import { registerCommands } from '../../src/commands/index.js';
import { registerZone, spanMs } from '../../src/commands/zone/zone.js';
import { zoneCard, type CardOptions } from '../../src/commands/zone/zone-card.js';
import { findZones, lettersApart } from '../../src/commands/zone/zone-find.js';
import { heaterChecks } from '../../src/assemble/checks/heater-checks.js';
import { coloursFor } from '../../src/commands/terminal/colour.js';
import { sparkline } from '../../src/commands/terminal/sparkline.js';
import { tableLines } from '../../src/commands/terminal/table.js';
import { cutText, safeText, textWidth, wrapText } from '../../src/commands/terminal/text-width.js';
import { zoneOnMachine } from '../../src/report/text/names.js';
import { hostileFindings, plantFindings } from '../make/report/findings.js';

const findings = plantFindings();
const [loose] = findings.zones;
const paper = { isTerminal: false, columns: 80, env: {} } as const;
const options: CardOptions = { fromMs: -Infinity, unit: 'degC', isWhyWanted: false, terminal: paper };
const card = (more: Partial<CardOptions> = {}): string =>
  zoneCard(loose!, findings, { ...options, ...more }).replaceAll('\u00A0', ' ');

describe('the card of a zone', () => {
  test('says verdict, probabilities, last faults, what to bring, and what to measure with numbers', () => {
    const text = card();
    for (const part of [
      'Needs a fitter',
      'wiring',
      '81 %',
      'Last faults',
      'Sat 14 Feb 13:54',
      'Bring:',
      '107.6 Ω',
      'lock out',
    ]) {
      expect(text).toContain(part);
    }
    expect(text).not.toContain('Before any evidence');
  });

  test('shows no degree Celsius where Fahrenheit is asked for', () => {
    const why = `Zone ${loose!.zone}: a drift below 21 °C does not show.`;
    const zone = { ...loose!, unable: [{ detector: 'slow-drift', why }] };
    const text = zoneCard(zone, findings, { ...options, unit: 'degF', isWhyWanted: true }).replaceAll('\u00A0', ' ');
    expect(text).toContain('A drift below 38 °F does not show.');
    expect(text).not.toContain('°C');
  });

  test('marks single faults, the time a fault lasts, and what the signs stand for', () => {
    const [fromMs, untilMs] = [findings.window.start, findings.window.end].map((time) => Date.parse(time));
    const quarter = (n: number) => new Date(fromMs! + (n / 4) * (untilMs! - fromMs!)).toISOString();
    const lines = (zone: typeof loose) =>
      zoneCard(zone!, findings, options)
        .split('\n')
        .filter((line) => /^Faults|sign/.test(line));
    const single = { start: quarter(1.5), end: quarter(1.5), kind: 'open' };
    const symptoms = loose!.symptoms.slice(0, 1).map((symptom) => ({ ...symptom, end: quarter(3) }));
    const [faults, key] = lines({ ...loose!, onset: quarter(2), fixed: null, symptoms, faultMarks: [single] });
    expect(faults).toMatch(/^Faults {4}·+×+·+─+·+$/);
    const [before, after] = [faults!.indexOf('─') - 10, faults!.lastIndexOf('─') - 9].map((place) => place / 70);
    expect(before).toBeCloseTo(0.5, 1);
    expect(after).toBeCloseTo(0.75, 1);
    expect(key).toContain('each sign');
    expect(lines({ ...loose!, status: 'healthy', fixed: null, faultMarks: [] })[0]).not.toContain('Faults');
  });

  test('what the verdict says is not said again as seen', () => {
    const probabilities = { ...loose!.probabilities, wiring: 0.2, none: 0.7 };
    const text = zoneCard({ ...loose!, status: 'healthy', probabilities }, findings, { ...options, isWhyWanted: true });
    const plain = text.replace(/\s+/g, ' ');
    const said = /What was seen: (.{30})/.exec(plain)![1]!;
    expect(plain.toLowerCase().split(said.toLowerCase())).toHaveLength(2);
  });

  test('with --why shows the sum, in °F the other scale', () => {
    expect(card({ isWhyWanted: true })).toMatch(/Before any evidence\n +sensor −2\.4, wiring −2\.6/);
    expect(card({ unit: 'degF' })).toContain('set point 359.6 °F');
    expect(card({ unit: 'degF' })).not.toMatch(/\d °C/);
  });

  test('no line is wider than the terminal, whatever the names', () => {
    for (const columns of [40, 80, 200]) {
      for (const zone of [...findings.zones.slice(0, 5), ...hostileFindings().zones]) {
        const text = zoneCard(zone, findings, { ...options, terminal: { ...paper, columns } });
        for (const line of text.split('\n')) expect(textWidth(line), line).toBeLessThanOrEqual(columns);
      }
    }
  });

  test('is one screen: 40 lines at 100 columns, 30 for a healthy zone; --why has what was left out', () => {
    const wide = { ...paper, columns: 100 };
    for (const zone of findings.zones) {
      const lines = (isWhyWanted: boolean) =>
        zoneCard(zone, findings, { ...options, isWhyWanted, terminal: wide })
          .trimEnd()
          .split('\n').length;
      const most = zone.status === 'healthy' ? 30 : 40;
      expect(lines(false), zone.zone).toBeLessThanOrEqual(most);
      expect(lines(true)).toBeGreaterThan(lines(false));
    }
  });

  test('a value that is the same at a later place is not written twice', () => {
    const text = card({ terminal: { ...paper, columns: 100 } });
    expect(text).toMatch(/At the cabinet terminals: .*as at the sensor’s own connector/);
    expect(text.match(/more than 100 MΩ/g)).toHaveLength(1);
  });

  test('of a heater the steps without a number say what to do', () => {
    const checks = heaterChecks({ ratedW: 1000, ratedV: 240 });
    const text = zoneCard({ ...loose!, checks }, findings, options)
      .replaceAll('\u00A0', ' ')
      .replace(/\s+/g, ' ');
    expect(text).toContain('57.6 Ω'); // 240² / 1000, arithmetic
    expect(text).toContain('power on, authorised people only: True-RMS clamp around one lead');
    expect(text).toContain('and 1 more, with --why');
  });

  test('leaves out what is older than --last', () => {
    const end = Date.parse(findings.window.end);
    expect(card({ fromMs: end - spanMs('1d') })).toContain('No fault seen in this time');
    expect(card({ fromMs: end - spanMs('2w') })).toContain('Last faults');
  });

  test('colours on a terminal only, and not with NO_COLOR', () => {
    const escape = '\u001B[';
    expect(card({ terminal: { ...paper, isTerminal: true } })).toContain(escape);
    expect(card()).not.toContain(escape);
    expect(card({ terminal: { isTerminal: true, columns: 80, env: { NO_COLOR: '1' } } })).not.toContain(escape);
    expect(coloursFor({ isTerminal: true, columns: 80, env: { TERM: 'dumb' } }).bad('x')).toBe('x');
  });

  test('a name cannot send commands to the terminal', () => {
    const evil = { ...loose!, zone: 'Jaw\u001B]0;owned\u0007\u202E' };
    expect(zoneCard(evil, findings, options)).not.toMatch(/[\u0000-\u0009\u000B-\u001F\u202E]/);
  });
});

describe('finding a zone', () => {
  test('by its name in any case, by words of name and machine, on every machine that has it', () => {
    expect(
      findZones(findings.zones, 'front JAW')
        .map(({ machine }) => machine)
        .sort(),
    ).toEqual(['Tray sealer 1', 'Tray sealer 2']);
    for (const zone of findings.zones) expect(findZones(findings.zones, zoneOnMachine(zone))).toContain(zone);
    expect(findZones(findings.zones, 'front jaw on tray sealer 2').map(({ machine }) => machine)).toEqual([
      'Tray sealer 2',
    ]);
    const numbered = ['PK02', 'PK03'].flatMap((machine) =>
      [1, 2, 3].map((n) => ({ zone: `${machine}-Zone ${n}`, machine })),
    );
    expect(findZones(numbered, 'pk03 zone 3')).toEqual([{ zone: 'PK03-Zone 3', machine: 'PK03' }]);
    expect(findZones(numbered, 'zone 3').map(({ zone }) => zone)).toContain('PK02-Zone 3');
    expect(findZones(findings.zones, 'sealer 2 front').map(({ machine }) => machine)).toEqual(['Tray sealer 2']);
  });

  test('suggests the nearest names for one that is not there', () => {
    expect(() => findZones(findings.zones, 'Frnt jaw')).toThrow(/no zone "Frnt jaw".*Did you mean "Front jaw"/);
    expect(() => findZones([], 'Front jaw')).toThrow(/No zone was found/);
  });

  test('counts letters apart as Levenshtein does', () => {
    // The textbook example, from memory: kitten → sitting takes 3.
    expect(lettersApart('kitten', 'sitting')).toBe(3);
    expect(lettersApart('', 'abc')).toBe(3);
  });

  test('a length of time is read, or refused in a sentence', () => {
    expect([spanMs('36h'), spanMs('30d'), spanMs('2w')]).toEqual([36 * 3_600_000, 30 * 86_400_000, 14 * 86_400_000]);
    for (const wrong of ['', '30', '0d', 'd', '3 months', '-2d']) expect(() => spanMs(wrong)).toThrow(/36h, 30d or 2w/);
  });
});

describe('text on a terminal', () => {
  test('a table keeps to its width and cuts the widest column first', () => {
    const rows = [
      ['a'.repeat(90), '12'],
      ['b', '3'],
    ];
    const lines = tableLines([{ head: 'Name' }, { head: 'Count', align: 'right' }], rows, 40);
    expect(lines.map(textWidth).every((width) => width <= 40)).toBe(true);
    expect(lines[1]).toMatch(/^a+… +12$/);
  });

  test('wrapped text loses no word and no line is too wide', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{1,30}$/), { maxLength: 20 }),
        fc.integer({ min: 8, max: 60 }),
        (words, width) => {
          const lines = wrapText(words.join(' '), width);
          expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
          for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(width);
        },
      ),
    );
  });

  test('wide signs count double, joined marks not at all', () => {
    expect([textWidth('温度'), textWidth('e\u0301'), textWidth('abc')]).toEqual([4, 1, 3]);
    expect(cutText('温度温度', 5)).toBe('温度…');
    expect(safeText('a\u001B[2Jb\n')).toBe('a\uFFFD[2Jb\uFFFD');
  });

  test('a sparkline shows the largest of each place, blanks where nothing is', () => {
    expect(sparkline([0, 7, null, null, 3, 3], 3)).toBe('█ ▁');
    expect(sparkline([5, 5], 2)).toBe('▄▄');
    expect(sparkline([], 10)).toBe('');
  });
});

describe('completion', () => {
  const program = new Command('looselead');
  registerZone(program);

  test.each(['bash', 'zsh', 'fish'] as const)('%s offers the commands and their options', (shell) => {
    const script = completionScript(program, shell);
    expect(script).toContain('zone');
    expect(script).toMatch(shell === 'fish' ? /-l why/ : /--why/);
  });

  test('the bash script offers the words that an argument may be, and leaves files to the shell', () => {
    const whole = new Command('looselead');
    registerCommands(whole, { needsAttention: false });
    const script = `${completionScript(whole, 'bash')}
COMP_WORDS=(looselead completion ""); COMP_CWORD=2; _looselead; echo "\${COMPREPLY[@]}"
COMP_WORDS=(looselead downtime lo); COMP_CWORD=2; _looselead; echo "\${#COMPREPLY[@]}"`;
    const { status, stdout } = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
    expect([status, stdout]).toEqual([0, 'bash zsh fish\n0\n']);
  });

  test('the bash script runs and completes', () => {
    const script = `${completionScript(program, 'bash')}
COMP_WORDS=(looselead zone --wh); COMP_CWORD=2; _looselead; echo "\${COMPREPLY[@]}"
COMP_WORDS=(looselead z); COMP_CWORD=1; _looselead; echo "\${COMPREPLY[@]}"`;
    const { status, stdout } = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
    expect([status, stdout.trim().split('\n')]).toEqual([0, ['--why', 'zone']]);
  });
});
