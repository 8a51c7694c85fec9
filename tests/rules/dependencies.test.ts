import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const manifest = JSON.parse(read('package.json')) as Record<'dependencies' | 'devDependencies', Record<string, string>>;

test('every dependency is exact, so that two installs are the same', () => {
  for (const [name, version] of Object.entries({ ...manifest.dependencies, ...manifest.devDependencies })) {
    expect(`${name} ${version}`).toMatch(/ \d+\.\d+\.\d+$/);
  }
});

test('DEVELOPERS.md says of every dependency what it is for, and of no other', () => {
  const section = read('DEVELOPERS.md').split('## Dependencies, and why')[1]!;
  const named = section
    .split('\n')
    .filter((line) => line.startsWith('| ') && !/^\| (package|-)/.test(line))
    .flatMap((line) =>
      line
        .split('|')[1]!
        .split(',')
        .map((name) => name.trim()),
    );
  const known = (name: string): boolean =>
    named.some((entry) => (entry.endsWith('*') ? name.startsWith(entry.slice(0, -1)) : entry === name));
  for (const name of Object.keys(manifest.dependencies)) expect([name, known(name)]).toEqual([name, true]);
  for (const entry of named) {
    const stem = entry.replace(/\*$/, '');
    expect([entry, Object.keys(manifest.dependencies).some((name) => name.startsWith(stem))]).toEqual([entry, true]);
  }
});
