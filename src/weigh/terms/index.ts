import type { Term } from '../term.js';
import { driftTerms } from './drift.js';
import { heatTerms } from './heat.js';
import { inputTerms } from './input.js';
import { openTerms } from './opens.js';
import { stepTerms } from './steps.js';
import { whenOpenTerms } from './when-open.js';

/** Every term, in the order of the pages. A new one = one entry in a file here, then `npm run fit`. */
export const terms: readonly Term[] = [
  ...openTerms,
  ...whenOpenTerms,
  ...stepTerms,
  ...driftTerms,
  ...heatTerms,
  ...inputTerms,
];
