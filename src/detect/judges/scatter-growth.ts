import type { Episode, Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { HOUR_MS } from '../../model/time-units.js';
import { changeInMean } from '../../maths/change-in-mean.js';
import { mannKendall } from '../../maths/mann-kendall.js';
import { median } from '../../maths/quantile.js';
import { theilSen } from '../../maths/theil-sen.js';
import { conditionsOf } from '../shared/readings/exposure.js';
import { judgeZones, symptomOf } from '../shared/basics/judge-zones.js';
import { peersOf } from '../shared/readings/movement.js';
import { noisyStretchesOf } from '../shared/readings/noisy-stretches.js';
import { outputHuntingPercent } from '../shared/readings/output-hunting.js';
import { resolutionDegCOf } from '../shared/basics/sampling.js';

export interface ScatterGrowthSettings {
  /** Hours of settled readings without which growth cannot be told (own choice). */
  readonly fewestHours: number;
  /** Growth below this is seen on healthy zones with load and set point (own choice). */
  readonly smallestGrowthRatio: number;
  /** A zone this many times noisier than its peers throughout is told too (own choice). */
  readonly smallestPeerRatio: number;
  readonly largestPValue: number;
  /** Hours louder than the zone ever is at that time of the day, alone on its machine; fewer are a door or a draught. */
  readonly fewestLoudHours: number;
}

/** Noise that grew from the first to the last third of the log, or stands out from the peers', on this zone alone. */
export const scatterGrowth: Judge<ScatterGrowthSettings> = {
  meta: {
    id: 'scatter-growth',
    sees: 'a reading that scatters more than it did, or more than its neighbours do',
    needs: ['reading'],
    source: 'Mann–Kendall trend over six-hour medians of the hourly noise; common practice for the limits.',
    defaults: {
      fewestHours: 12,
      smallestGrowthRatio: 2,
      smallestPeerRatio: 4,
      largestPValue: 0.01,
      fewestLoudHours: 2,
    },
  },
  judge(evidence, settings) {
    const hoursOf = (zone: number) => evidence.episodes.get('scatter')?.[zone] ?? [];
    return judgeZones(evidence, 'scatter-growth', (zone) => {
      const hours = hoursOf(zone.index);
      if (hours.length < settings.fewestHours) {
        return `Zone ${zone.name}: ${hours.length} h of settled readings, needed ${settings.fewestHours}.`;
      }
      // Below half a step of the log noise is not seen, so a ratio to it would be of nothing.
      const floorDegC = resolutionDegCOf(zone) / 4;
      const third = Math.floor(hours.length / 3);
      const hunting = (part: readonly Episode[]) =>
        median(part.map(({ startMs, endMs }) => outputHuntingPercent(evidence, zone, startMs, endMs)));
      const first = Math.max(floorDegC, medianNoise(hours.slice(0, third)));
      const last = Math.max(floorDegC, medianNoise(hours.slice(-third)));
      const peers = peersOf(evidence, zone)
        .map((peer) => hoursOf(peer.index))
        .filter((h) => h.length >= 3);
      const peerNoise = Math.max(floorDegC, median(peers.map(medianNoise)));
      const peerGrowth = median(
        peers.map((h) => {
          const part = Math.floor(h.length / 3);
          return Math.max(floorDegC, medianNoise(h.slice(-part))) / Math.max(floorDegC, medianNoise(h.slice(0, part)));
        }),
      );
      const growth = last / first;
      const ownGrowth = growth / (Number.isNaN(peerGrowth) ? 1 : Math.max(1, peerGrowth));
      const blocks = sixHourMedians(hours);
      const trend = mannKendall(blocks.noise);
      // One sensor makes no neighbour noisier: where half of them grew as much as counts, it is the machine.
      const isShared = peerGrowth >= settings.smallestGrowthRatio;
      const isGrown =
        !isShared &&
        ownGrowth >= settings.smallestGrowthRatio &&
        trend.s > 0 &&
        trend.pTwoSided <= settings.largestPValue;
      const peerRatio = medianNoise(hours) / peerNoise;
      const isOutstanding = peers.length >= 2 && peerRatio >= settings.smallestPeerRatio && !isSwitched(evidence, zone);
      const loud = isSwitched(evidence, zone) ? [] : noisyStretchesOf(evidence)[zone.index]!;
      const loudHours = loud.reduce((sum, stretch) => sum + (stretch.endMs - stretch.startMs) / HOUR_MS, 0);
      const isLoud = loudHours >= settings.fewestLoudHours;
      if (!isGrown && !isOutstanding && !isLoud) return [];
      const startMs = isGrown ? onsetMs(hours) : isOutstanding ? hours[0]!.startMs : loud[0]!.startMs;
      return [
        symptomOf('scatter-growth', startMs, hours.at(-1)!.endMs, hours.length, {
          firstNoiseDegC: first,
          lastNoiseDegC: last,
          growthRatio: growth,
          ownGrowthRatio: ownGrowth,
          outputGrowthRatio: hunting(hours.slice(-third)) / hunting(hours.slice(0, third)),
          peerGrowthRatio: peerGrowth,
          peerNoiseRatio: peerRatio,
          trendPValue: trend.pTwoSided,
          noiseSlopeDegCPerDay: theilSen(blocks.days, blocks.noise).slope,
          hoursCount: hours.length,
          loudHours: isLoud ? loudHours : NaN,
          loudNoiseDegC: isLoud ? median(loud.map(({ noiseDegC }) => noiseDegC)) : NaN,
          loudTimesUsualRatio: isLoud ? median(loud.map(({ timesUsual }) => timesUsual)) : NaN,
        }),
      ];
    });
  },
};

/** An output at one of its ends for this share of the hot time is switched on and off (own choice). */
const SWITCHED_SHARE = 0.8;
const END_PERCENT = 2;

/** On/off control: its swing, logged more slowly than it swings, looks like noise and is heat. */
function isSwitched(evidence: Evidence, zone: Zone): boolean {
  const { outputPercent } = evidence.digest.zones[zone.index]!;
  const { hot } = conditionsOf(evidence)[zone.index]!;
  let known = 0;
  let atEnd = 0;
  for (let i = 0; i < outputPercent.length; i++) {
    const percent = outputPercent[i]!;
    if (hot[i] !== 1 || Number.isNaN(percent)) continue;
    known++;
    if (percent <= END_PERCENT || percent >= 100 - END_PERCENT) atEnd++;
  }
  return atEnd > SWITCHED_SHARE * known;
}

function medianNoise(hours: readonly Episode[]): number {
  return median(hours.map((hour) => hour.facts['noiseDegC']!));
}

/** A reading of one value has no noise; its logarithm must stay finite (a hundredth of what any log resolves). */
const SMALLEST_NOISE_DEG_C = 1e-3;

/** The hour from which the noise, as a logarithm, is most clearly at another level. */
function onsetMs(hours: readonly Episode[]): number {
  const logs = hours.map(({ facts }) => Math.log(Math.max(facts['noiseDegC']!, SMALLEST_NOISE_DEG_C)));
  return hours[Math.max(0, changeInMean(logs).index)]!.startMs;
}

/** Medians over six hours of log time: neighbouring hours resemble each other, which would flatter a trend test. */
function sixHourMedians(hours: readonly Episode[]): { days: number[]; noise: number[] } {
  const blocks = new Map<number, number[]>();
  for (const hour of hours) {
    const block = Math.floor(hour.startMs / (6 * HOUR_MS));
    const held = blocks.get(block);
    if (held) held.push(hour.facts['noiseDegC']!);
    else blocks.set(block, [hour.facts['noiseDegC']!]);
  }
  return {
    days: [...blocks.keys()].map((block) => block / 4),
    noise: [...blocks.values()].map((held) => median(held)),
  };
}
