import { test } from 'vitest';
import { conclude, analyse } from '../../src/pipeline.js';
import { gather, type GatherOptions } from '../../src/gather.js';
import type { Findings, SymptomNote, ZoneFinding } from '../../src/model/findings.js';
import type { Gathered } from '../../src/model/gathered.js';
import { sharedData } from '../make/shared-data.js';

/** A test on a published file or folder; skipped, and said so, where this machine does not have it. */
export function onOpenData(name: string, title: string, check: (path: string) => Promise<void> | void): void {
  const path = sharedData(`open/${name}`);
  if (path === undefined) test.skip(`${name}: ${title} (open data not on this machine)`, () => undefined);
  else test(`${name}: ${title}`, () => check(path));
}

export { analyse, gather };

/** What was gathered and what follows from it, in one reading. */
export async function both(
  path: string,
  options: GatherOptions = {},
): Promise<{ gathered: Gathered; findings: Findings }> {
  const gathered = await gather([path], options);
  return { gathered, findings: conclude(gathered) };
}

export function zoneOf(findings: Findings, name: string): ZoneFinding {
  const zone = findings.zones.find((it) => it.zone === name);
  if (!zone) throw new Error(`No zone "${name}"; there are ${findings.zones.map((it) => it.zone).join(', ')}.`);
  return zone;
}

export function symptomsOf(zone: ZoneFinding, detector: string): readonly SymptomNote[] {
  return zone.symptoms.filter((symptom) => symptom.detector === detector);
}

/** Zones called faulty or worth a look, with their likeliest cause, for a readable failure. */
export function claims({ zones }: Findings): string[] {
  return zones
    .filter(({ status }) => status === 'faulty' || status === 'watch')
    .map(({ zone, status, probabilities }) => {
      const [cause] = Object.entries(probabilities)
        .filter(([name]) => name !== 'none')
        .sort((a, b) => b[1] - a[1])[0]!;
      return `${zone}: ${status}, ${cause}`;
    });
}
