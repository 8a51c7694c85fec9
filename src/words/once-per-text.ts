/** Texts kept at once; a log with more tags is read as well, only more slowly (own choice). */
const mostTexts = 10_000;

/**
 * Makes a computation on a text run once for it, however often the survey asks: names come again for each of its steps.
 *
 * @param compute Depends on the text alone; its answer is not changed by anybody.
 */
export function oncePerText<T>(compute: (text: string) => T): (text: string) => T {
  const held = new Map<string, T>();
  return (text) => {
    const known = held.get(text);
    if (known !== undefined) return known;
    const answer = compute(text);
    if (held.size >= mostTexts) held.clear();
    held.set(text, answer);
    return answer;
  };
}
