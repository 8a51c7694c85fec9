/** Items in groups of one key, groups and items in the order in which they came. Groups are never empty. */
export function alike<Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string,
): readonly (readonly [Item, ...Item[]])[] {
  const groups = new Map<string, [Item, ...Item[]]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return [...groups.values()];
}

/** A sentence without its numbers, so that "3 rows …" and "15 rows …" fall into one group. */
export function withoutNumbers(text: string): string {
  return text.replace(/\d+(?:[.,]\d+)?/g, '#');
}
