/** "Zone: Front jaw", in the languages that exports are met in (common practice). */
const zoneLine =
  /^\W*(?:(?:heiz)?zone|tag|tag ?name|name|channel|kanal|sensor|point|loop|zona|strefa|sone|messstelle|bezeichnung|nom|nome|nombre|naam|nazwa|voie|canal|sonde|sonda|sensore|kanaal|anneau|regelkreis)(?: name)?\s*[:=;,\t][:=;,\s]*(.+?)\W*$/i;

/** The zone that a line above the header names, for a file that holds one zone; null = none does. */
export function zoneOfPreamble(preamble: readonly string[]): string | null {
  for (const line of preamble) {
    const said = zoneLine.exec(line);
    if (said && /\p{L}/u.test(said[1]!)) return said[1]!;
    const zone = /\b((?:heiz)?(?:zone|zona|strefa|sone|zon)[ _-]?\d+)\b/i.exec(line);
    if (zone) return zone[1]!;
  }
  return null;
}
