import { splitNumbered } from '../names/column-name.js';
import type { RoledSeries } from './roled-series.js';

/** "Heater 1", "Input 1" and "Out 1" name things as often as roles; they follow where others with their number lead. */
const numberedThings = /^(in|input|heater|heating|heat|measurement|power|output|out)$/i;

/**
 * Joins columns that say nothing but a role and a number ("PV1", "SP1", "OUT1"): the number is the zone's. A bare
 * "CH1" beside "SP1" is the reading. Columns that name a zone in words stay as they are.
 *
 * @param unsaid The reason that stands in columns whose names did not say what they are.
 */
export function joinNumbered(all: readonly RoledSeries[], unsaid: string): RoledSeries[] {
  const numbered = all.map((it) => numberedOf(it, unsaid));
  const leading = new Set(
    numbered.flatMap((it) => (it && isControl(it) && !numberedThings.test(it.word) ? [it.number] : [])),
  );
  const readings = readingsByNumber(all, numbered, leading, unsaid);
  return all.map((it, i) => {
    const own = [...readings.values()].find((reading) => reading.series === it.series);
    if (own) return own;
    const named = numbered[i];
    const reading = named && readings.get(named.number);
    if (!named || !reading || !isControl(named)) return it;
    const why = `the word "${named.word}", and the number of "${reading.series.name}"`;
    return { ...it, role: named.meaning as 'setpoint' | 'output', rest: reading.rest, why };
  });
}

type Numbered = NonNullable<ReturnType<typeof splitNumbered>>;

function isControl({ meaning }: Numbered): boolean {
  return meaning === 'setpoint' || meaning === 'output';
}

/** The name's parts where nothing is known of the column but the role and a number. */
function numberedOf({ role, rest, series, why }: RoledSeries, unsaid: string): Numbered | null {
  const isOpen = why === unsaid || (role !== 'ignored' && splitNumbered(rest) !== null);
  return isOpen ? splitNumbered(series.name) : null;
}

/** One reading for each number; a number that two columns claim is nobody's. */
function readingsByNumber(
  all: readonly RoledSeries[],
  numbered: readonly (Numbered | null)[],
  leading: ReadonlySet<number>,
  unsaid: string,
): Map<number, RoledSeries> {
  const found = new Map<number, RoledSeries[]>();
  all.forEach((it, i) => {
    const named = numbered[i];
    const number = named?.number ?? Number(/\d+$/.exec(it.rest)?.[0] ?? NaN);
    const reading = Number.isNaN(number) ? null : asReading(it, named ?? null, number, leading, unsaid);
    if (reading) found.set(number, [...(found.get(number) ?? []), reading]);
  });
  return new Map([...found].flatMap(([number, claims]) => (claims.length === 1 ? [[number, claims[0]!]] : [])));
}

function asReading(
  it: RoledSeries,
  named: Numbered | null,
  number: number,
  leading: ReadonlySet<number>,
  unsaid: string,
): RoledSeries | null {
  if (named?.meaning === 'reading' && !numberedThings.test(named.word))
    return { ...it, role: 'reading', rest: `Zone ${number}`, why: `the word "${named.word}"` };
  if (!leading.has(number) || (named && isControl(named) && !numberedThings.test(named.word))) return null;
  if (it.role === 'reading' && /^\p{L}+[\s_.#-]*\d+$/u.test(it.rest)) return it;
  if (it.why !== unsaid || named?.meaning === 'output') return null;
  return /^\p{L}+[\s_.#-]*\d+$/u.test(it.rest)
    ? { ...it, role: 'reading', why: 'the bare name beside the set point or output of its number' }
    : null;
}
