import type { Evidence } from '../../model/detector.js';

/**
 * Makes a computation on the whole window run once per window, however many judges ask for it. Evidence never
 * changes, so the answer cannot go stale; it goes when the evidence does.
 */
export function oncePer<T>(compute: (evidence: Evidence) => T): (evidence: Evidence) => T {
  const held = new WeakMap<Evidence, { readonly answer: T }>();
  return (evidence) => {
    const known = held.get(evidence);
    if (known) return known.answer;
    const answer = compute(evidence);
    held.set(evidence, { answer });
    return answer;
  };
}
