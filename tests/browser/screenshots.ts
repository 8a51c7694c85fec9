// Takes the README's pictures: npm run screenshots [findings.json]. Without a file it uses the made plant.
import { readFile, mkdir, stat } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Findings } from '../../src/model/findings.js';
import { plantFindings } from '../make/report/findings.js';
import { launch, removeReports, reportAddress } from './chromium.js';

interface Picture {
  readonly name: string;
  readonly screen: string;
  readonly width: number;
  readonly height: number;
  readonly colours: 'light' | 'dark';
}

const pictures: readonly Picture[] = [
  { name: 'act-on-this', screen: 'act', width: 1440, height: 900, colours: 'light' },
  { name: 'zone-page', screen: 'zone-1', width: 1440, height: 1150, colours: 'light' },
  { name: 'lost-time', screen: 'lost', width: 1440, height: 1000, colours: 'dark' },
  { name: 'trust', screen: 'trust', width: 1440, height: 900, colours: 'light' },
  { name: 'phone', screen: 'act', width: 390, height: 844, colours: 'light' },
  { name: 'phone-zone-dark', screen: 'zone-1', width: 390, height: 844, colours: 'dark' },
];

const mostBytes = 300_000;
const folder = fileURLToPath(new URL('pictures/', import.meta.url));
const [file] = process.argv.slice(2);
const findings = file ? (JSON.parse(await readFile(file, 'utf8')) as Findings) : plantFindings();
const address = await reportAddress(findings);
const browser = await launch();
await mkdir(folder, { recursive: true });
for (const { name, screen, width, height, colours } of pictures) {
  const page = await browser.newPage({ viewport: { width, height }, colorScheme: colours });
  await page.goto(`${address}#${screen}`);
  if (screen !== 'act' && screen !== 'trust') await page.waitForSelector('.view.open .chart svg');
  await page.waitForTimeout(1500); // all charts of the screen
  const path = `${folder}${name}.png`;
  await page.screenshot({ path });
  const { size } = await stat(path);
  process.stdout.write(`${name}.png ${Math.round(size / 1000)} kB\n`);
  if (size > mostBytes) process.stderr.write(`${name}.png is larger than ${mostBytes / 1000} kB.\n`);
  await page.close();
}
await browser.close();
removeReports();
