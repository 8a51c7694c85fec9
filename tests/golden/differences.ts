/**
 * What changed from one plain value to another, a line per change with its place: "zones.Left.share: 0.2 → 0.3".
 * Lists are compared as what they hold, not by position, so one new item is one line.
 */
export function differences(before: unknown, after: unknown, place = ''): string[] {
  if (Array.isArray(before) && Array.isArray(after)) return listDifferences(before, after, place);
  if (isObject(before) && isObject(after)) return objectDifferences(before, after, place);
  const [was, is] = [JSON.stringify(before), JSON.stringify(after)];
  return was === is ? [] : [`${place}: ${was} → ${is}`];
}

function objectDifferences(
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
  place: string,
): string[] {
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return keys.flatMap((key) => {
    const at = place === '' ? key : `${place}.${key}`;
    if (!(key in after)) return [`${at}: no longer ${JSON.stringify(before[key])}`];
    if (!(key in before)) return [`${at}: now also ${JSON.stringify(after[key])}`];
    return differences(before[key], after[key], at);
  });
}

function listDifferences(before: readonly unknown[], after: readonly unknown[], place: string): string[] {
  const [was, is] = [before, after].map((list) => list.map((item) => JSON.stringify(item)));
  return [
    ...without(was!, is!).map((item) => `${place}: no longer ${item}`),
    ...without(is!, was!).map((item) => `${place}: now also ${item}`),
  ];
}

/** Items of one list that the other does not hold as often. */
function without(list: readonly string[], other: readonly string[]): string[] {
  const left = [...other];
  return list.filter((item) => {
    const at = left.indexOf(item);
    if (at < 0) return true;
    left.splice(at, 1);
    return false;
  });
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
