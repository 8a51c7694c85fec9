import { bareLine, objectOf, type JsonPlace } from './json-rows.js';

/** So many lines are tried whether each is an object by itself (own choice). */
const linesTried = 20;

/**
 * Where the objects of a text of JSON stand: each on a line of its own, one behind the other, in an array, or in an array
 * within an object.
 *
 * @param head The beginning of the text; its last line may be cut off where `isWhole` is false.
 * @returns null for a text that is no JSON, or that holds no objects in a row. Never throws.
 */
export function jsonPlaceOf(head: string, isWhole: boolean): JsonPlace | null {
  if (!/^\s*[[{]/.test(head)) return null;
  const lines = head
    .split('\n')
    .slice(0, isWhole ? undefined : -1)
    .map(bareLine)
    .filter((line) => line !== '');
  const tried = lines.slice(0, linesTried);
  if (tried.length > 1 && tried.filter((line) => objectOf(line) !== null).length >= 0.9 * tried.length)
    return { depth: 0, isByLine: true };
  const depth = depthOf(head);
  return depth === null ? null : { depth, isByLine: false };
}

/** How many brackets deep the objects stand; null where no array holds any and none follow each other. */
function depthOf(text: string): number | null {
  const above: string[] = [];
  let last = '';
  for (const mark of withoutStrings(text)) {
    if (mark === '{' && last === '}' && above.length === 0) return 0;
    if (mark === '{' && above.at(-1) === '[') return above.length;
    if (mark === '{' || mark === '[') above.push(mark);
    else above.pop();
    last = mark;
  }
  return null;
}

/** The brackets of a text in their order, those within strings left out. */
function* withoutStrings(text: string): Generator<string> {
  for (const [found] of text.matchAll(/"(?:[^"\\]|\\.)*"?|[[\]{}]/gs)) if (!found.startsWith('"')) yield found;
}
