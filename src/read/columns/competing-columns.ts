import { looseName } from '../names/column-name.js';
import { plainWords } from '../names/role-words.js';
import { nearestRank } from './nearest-rank.js';
import type { RoledSeries } from './roled-series.js';

/** Which end of a span of time a column holds; common practice, several languages. */
const extremeWord =
  /(?:^| )(?:min|max|minimum|maximum|mini|maxi|minimal|maximal|lowest|highest|peak|minimalwert|maximalwert|kleinstwert|hochstwert|minimo|massimo|maximo|laagste|hoogste|lagsta|hogsta|мин|макс|минимум|максимум|最小|最大|最低|最高|최소|최대)(?: (?:value|wert|valeur|valor|valore|值|値))?(?= |$)/u;
/** The value at the end of a span of time; common practice, several languages. */
const lastWord =
  /(?:^| )(?:last|latest|instant|instantaneous|momentary|snapshot|letzter?|momentan|dernier|derniere|ultimo|ultima|laatste|sista|siste|seneste)(?: (?:value|wert|valeur|valor|valore))?$/;
const meanWord =
  /(?:^| )(?:avg|average|mean|mittel|mittelwert|durchschnitt|moyenne|moy|promedio|media|medio|gemiddelde?|medel|medelvarde|gjennomsnitt|gennemsnit)(?: |$)/;
/** Which set point a column holds, where a controller has several; taken off to find the zone. */
const setpointKind = /(?:^| )(?:active|working|current|effective|actual|local|remote|internal|external|manual|[lrw])$/u;

/**
 * Leaves the smallest and largest values of a span of time alone where their zone has its mean or its last value, the mean
 * where it has the last value, which does not blur what came and went within the span, and of several set points of a zone all but the one that the reading follows.
 */
export function settleCompeting(all: readonly RoledSeries[]): RoledSeries[] {
  return oneSetpoint(withoutExtremes(lastForMean(all)));
}

function lastForMean(all: readonly RoledSeries[]): RoledSeries[] {
  const lastOf = new Map(
    all.flatMap((it) => {
      const words = plainWords(it.rest);
      return it.role === 'reading' && lastWord.test(words) ? [[looseName(words.replace(lastWord, '')), it]] : [];
    }),
  );
  const means = new Map(
    all.flatMap((it) => {
      const isMean =
        it.role === 'reading' && meanWord.test(plainWords(it.series.name)) && lastOf.has(looseName(it.rest));
      return isMean ? [[lastOf.get(looseName(it.rest))!, it]] : [];
    }),
  );
  const replaced = new Set(means.values());
  const why = 'the mean of a span of time, whose last value is read';
  return all.map((it) => {
    if (replaced.has(it)) return { ...it, role: 'ignored' as const, why };
    return { ...it, rest: means.get(it)?.rest ?? it.rest };
  });
}

function withoutExtremes(all: readonly RoledSeries[]): RoledSeries[] {
  const bare = new Set(
    all.flatMap(({ role, rest, series }) =>
      role === 'reading' && !extremeWord.test(plainWords(series.name)) ? [looseName(rest)] : [],
    ),
  );
  return all.map((it) => {
    const words = plainWords(it.rest);
    if (it.role !== 'reading' || !extremeWord.test(words)) return it;
    const zone = looseName(words.replace(extremeWord, ' '));
    const why = 'the smallest or largest value of a span of time, whose mean or last value is read';
    return bare.has(zone) ? { ...it, role: 'ignored' as const, rest: zone, why } : it;
  });
}

function oneSetpoint(all: readonly RoledSeries[]): RoledSeries[] {
  const readings = new Map(all.flatMap((it) => (it.role === 'reading' ? [[looseName(it.rest), it] as const] : [])));
  const zoneOf = ({ rest }: RoledSeries): string => {
    const own = looseName(rest);
    return readings.has(own) ? own : looseName(plainWords(rest).replace(setpointKind, ''));
  };
  const groups = new Map<string, RoledSeries[]>();
  for (const it of all.filter(({ role, rest }) => role === 'setpoint' && rest !== ''))
    groups.set(zoneOf(it), [...(groups.get(zoneOf(it)) ?? []), it]);
  return all.map((it) => {
    const group = it.role === 'setpoint' ? (groups.get(zoneOf(it)) ?? []) : [];
    const reading = readings.get(zoneOf(it));
    if (!reading || !group.includes(it) || (group.length < 2 && looseName(it.rest) === zoneOf(it))) return it;
    const inForceFirst = [...group].sort((a, b) => Number(isInForce(b)) - Number(isInForce(a)));
    const followed = inForceFirst.reduce((a, b) => (distance(b, reading) < distance(a, reading) ? b : a));
    if (it === followed) return { ...it, rest: reading.rest };
    return {
      ...it,
      role: 'ignored' as const,
      why: `"${followed.series.name}" is the set point that the reading follows`,
    };
  });
}

/** Of two that stand alike the one that the controller works with is taken. */
function isInForce({ series }: RoledSeries): boolean {
  return /(?:^| )(?:active|working|current|effective|actual|wsp|w sp)(?: |$)/.test(plainWords(series.name));
}

/** How far the reading usually stands from a set point; infinite where the two are never there together. */
function distance(setpoint: RoledSeries, reading: RoledSeries): number {
  const apart = setpoint.series.value.map((value, i) =>
    Math.abs(value * setpoint.scale - (reading.series.value[i] ?? NaN) * reading.scale),
  );
  const known = apart.filter((value) => !Number.isNaN(value));
  return known.length === 0 ? Infinity : nearestRank(known, 0.5);
}
