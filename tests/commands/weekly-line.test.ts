import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cronText, windowsText } from '../../src/commands/weekly.js';
import { root, useProgram } from './program.js';

const { run } = useProgram();
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'looselead-line-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What cron hands to the shell: the part behind the five times, with each \% as % (crontab(5)). */
function shellLine(printed: string): string {
  const line = printed.split('\n').find((text) => text.startsWith('0 6 * * 1'))!;
  expect(line.replaceAll('\\%', '')).not.toContain('%');
  return line.replace(/^(\S+\s+){5}/u, '').replaceAll('\\%', '%');
}

test('the printed line runs as cron runs it: by sh, with next to no environment', () => {
  const logs = join(folder, "Line 2's logs, 100 %");
  mkdirSync(logs);
  const rows = Array.from({ length: 300 }, (_, i) => {
    const time = new Date(Date.UTC(2026, 8, 7) + i * 60_000).toISOString().slice(0, 19);
    return `${time},${180 + (i % 3) / 10},180,30,${181 - (i % 3) / 10},180,30`;
  });
  writeFileSync(join(logs, 'log.csv'), ['Time,A PV,A SP,A OUT,B PV,B SP,B OUT', ...rows].join('\n'));
  const [out, history] = [join(folder, 'reports'), join(folder, 'history')];
  const printed = run('weekly', logs, '--out', out, '--history', history, '--for', 'cron');
  expect([printed.status, printed.stderr]).toEqual([0, '']);
  const env = { PATH: '/usr/bin:/bin', HOME: folder, SHELL: '/bin/sh' };
  const ran = spawnSync('/bin/sh', ['-c', shellLine(printed.stdout)], { cwd: root, encoding: 'utf8', env });
  expect([ran.status, ran.stdout, ran.stderr]).toEqual([0, '', '']);
  expect(existsSync(join(out, 'report.html'))).toBe(true);
  expect(readdirSync(history).some((name) => name.startsWith('run-'))).toBe(true);
});

test('a word that a shell would take apart is quoted', () => {
  expect(cronText(['/usr/bin/node', "/a b/it's 5 %", 'report'])).toContain(
    `0 6 * * 1  /usr/bin/node '/a b/it'\\''s 5 \\%' report\n`,
  );
});

test('for Windows: a command file with each path in quotes, and a task that names it', () => {
  const text = windowsText(
    ['C:\\Program Files\\nodejs\\node.exe', 'C:\\cli.js', 'report', 'D:\\100 %'],
    'C:\\a b\\x.cmd',
  );
  const lines = text.split('\n');
  expect(lines).toContain('"C:\\Program Files\\nodejs\\node.exe" "C:\\cli.js" "report" "D:\\100 %%"');
  const task = lines.find((line) => line.startsWith('schtasks'))!;
  // the C runtime of Windows reads \" as a quote inside a word (its documented rule for arguments)
  expect(/\/TR "(?<run>.*)"$/u.exec(task)!.groups!['run']!.replaceAll('\\"', '"')).toBe('"C:\\a b\\x.cmd"');
  expect(task.length).toBeLessThan(261);
});
