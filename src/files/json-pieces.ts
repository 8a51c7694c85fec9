/** Pieces are joined to about this many characters, since each is a write of its own. */
const PIECE_CHARS = 1 << 18;

/**
 * The text that `JSON.stringify` gives of a plain object, in pieces: lists directly in it are made item by item, so
 * the whole text of a large plant never lies in memory at once.
 */
export function* jsonPieces(of: object): Iterable<string> {
  let piece = '';
  for (const part of partsOf(of)) {
    piece += part;
    if (piece.length < PIECE_CHARS) continue;
    yield piece;
    piece = '';
  }
  yield piece;
}

function* partsOf(of: object): Iterable<string> {
  let before = '{';
  for (const [key, value] of Object.entries(of) as [string, unknown][]) {
    if (value === undefined) continue;
    yield `${before}${JSON.stringify(key)}:`;
    if (Array.isArray(value)) yield* itemsOf(value);
    else yield JSON.stringify(value);
    before = ',';
  }
  yield before === '{' ? '{}' : '}';
}

function* itemsOf(list: readonly unknown[]): Iterable<string> {
  let before = '[';
  for (const item of list) {
    yield before + (JSON.stringify(item) ?? 'null');
    before = ',';
  }
  yield before === '[' ? '[]' : ']';
}
