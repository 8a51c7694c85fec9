/**
 * Makes a computation on the whole window (or another thing that never changes) run once for it, however many judges
 * ask. The answer cannot go stale, and it goes when the thing does.
 */
export function oncePer<K extends object, T>(compute: (of: K) => T): (of: K) => T {
  const held = new WeakMap<K, { readonly answer: T }>();
  return (of) => {
    const known = held.get(of);
    if (known) return known.answer;
    const answer = compute(of);
    held.set(of, { answer });
    return answer;
  };
}
