/** Names of a recorder's channels, which say nothing of the zone (common practice). */
const channelName =
  /^(?:ch(?:an(?:nel)?)?|kanal|kan|canal|can|voie|kanaal|チャンネル|通道|채널)[ ._#-]*(?:no\.? ?)?\d{1,3}$/iu;
/** What stands in front of a row of names; nothing does, too (common practice). */
const rowLabel =
  /^\W*(?:(?:tag|tags|channel|kanal|canal|ch)?[ ._-]*(?:names?|no\.?|comment|description|text|bezeichnung)?|desc(?:r(?:iption)?)?\.?|bezeichnung|messstelle|nom|nome|nombre|naam|navn|nazwa|nazev|label|point|sensor|id|comment|zone|ad|etiket|名称|名稱|タグ|名前|이름)\W*$/iu;
/** So many rows above the header are looked at; a recorder writes number, tag, unit and limits there (own choice). */
const rowsAbove = 8;

/** A header with the names and units that rows above it hold. */
export interface FilledHeader {
  readonly names: readonly string[];
  /** Empty where no row above holds units. */
  readonly units: readonly string[];
}

/**
 * A header that has only channel numbers (CH1, CH2 …) or blanks over its columns takes the names from a row above whose
 * cells stand over the same columns.
 *
 * @param header Cells of the header.
 * @param above Cells of the rows above it, the nearest last.
 * @param isUnits Whether a row holds units.
 * @returns null where the header has names of its own, or no row above has any.
 */
export function namesFromAbove(
  header: readonly string[],
  above: readonly (readonly string[])[],
  isUnits: (cells: readonly string[]) => boolean,
): FilledHeader | null {
  const open = [...header.keys()].filter((column) => isOpen(header[column]!));
  if (open.length < 2 || open.length * 2 < header.length - 1) return null;
  const rows = above.slice(-rowsAbove).reverse();
  const over = (cells: readonly string[]): string[] => open.map((column) => cells[column]?.trim() ?? '');
  const candidates = rows.filter((cells) => isLabelled(cells, open) && !isUnits(cells) && areNames(over(cells)));
  const found = candidates.find((cells) => !over(cells).some((name) => channelName.test(name))) ?? candidates[0];
  if (!found || over(found).every((name, i) => name === header[open[i]!]!.trim())) return null;
  const names = header.map((name, column) => (isOpen(name) && found[column]?.trim()) || name);
  return { names, units: rows.find((cells) => isUnits(cells)) ?? [] };
}

function isOpen(name: string): boolean {
  return name.trim() === '' || channelName.test(name.trim());
}

/** Over the columns of the time stands nothing, or what the row is. */
function isLabelled(cells: readonly string[], open: readonly number[]): boolean {
  return cells.slice(0, open[0]).every((cell) => rowLabel.test(cell));
}

/** Words over half of the columns and more, and not all the same. */
function areNames(over: readonly string[]): boolean {
  const filled = over.filter((name) => name !== '');
  const isWords = filled.every((name) => /\p{L}/u.test(name));
  return filled.length * 2 >= over.length && isWords && new Set(filled).size > 1;
}
