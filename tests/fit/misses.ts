import type { ScoredZone } from './score.js';

/** One line per zone whose cause was missed, with the terms that spoke loudest. */
export function printMisses(zones: readonly ScoredZone[]): void {
  for (const { plant, truth, found } of zones) {
    const top = found ? Object.entries(found.probabilities).sort((a, b) => b[1] - a[1])[0] : undefined;
    if (top?.[0] === truth.cause || (truth.cause === 'none' && truth.drawn !== 'none')) continue;
    const terms = (found?.terms ?? []).slice(0, 5).map((term) => `${term.term} ${term.value.toFixed(2)}`);
    console.log(
      `${plant.name} ${plant.meta.has} ${truth.zone}: ${truth.cause}/${truth.fault} drift ${truth.driftC?.toFixed(1) ?? '-'}` +
        ` → ${top?.[0] ?? 'missing'} ${top?.[1].toFixed(2) ?? ''} [${terms.join(', ')}]`,
    );
  }
}
