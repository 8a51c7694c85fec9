import { causes, type Cause } from '../model/cause.js';
import type { PlantFile } from '../model/plant-file.js';

/** The fitted table: log-odds by cause before any evidence, and what each term adds at full value. */
export interface Strengths {
  readonly prior: Readonly<Record<Cause, number>>;
  readonly terms: Readonly<Record<string, Partial<Record<Cause, number>>>>;
}

/**
 * The table with what plant.yaml puts in its place. `priors` are shares, so they become logarithms; a cause that
 * plant.yaml leaves out keeps its share of what is left.
 */
export function withPlantOverrides(fitted: Strengths, plant: PlantFile): Strengths {
  const terms: Record<string, Partial<Record<Cause, number>>> = { ...fitted.terms };
  for (const [term, byCause] of Object.entries(plant.strengths ?? {})) terms[term] = { ...terms[term], ...byCause };
  return { prior: plant.priors ? priorFromShares(fitted.prior, plant.priors) : fitted.prior, terms };
}

function priorFromShares(
  fitted: Strengths['prior'],
  given: Partial<Record<Cause, number>>,
): Readonly<Record<Cause, number>> {
  const left = 1 - causes.reduce((sum, cause) => sum + (given[cause] ?? 0), 0);
  const open = causes.filter((cause) => given[cause] === undefined);
  const openWeight = open.reduce((sum, cause) => sum + Math.exp(fitted[cause]), 0);
  const share = (cause: Cause): number =>
    given[cause] ?? Math.max(0, left) * (Math.exp(fitted[cause]) / (openWeight || 1));
  return Object.fromEntries(causes.map((cause) => [cause, Math.log(Math.max(1e-9, share(cause)))])) as Record<
    Cause,
    number
  >;
}
