/**
 * Letters that say the type of a variable, small before its name: xRun, rActual, iOut, stZone (the types BOOL, REAL, INT
 * and STRUCT of IEC 61131-3; the letters are common practice). Not t for TIME: "tReal" is a real temperature.
 */
const typeLetters =
  /(?<![\p{L}\p{N}])(?:x|b|by|w|dw|i|si|di|ui|usi|udi|n|r|lr|f|s|st|a|ar|arr|fb)(?=\p{Lu}(?:\p{Ll}|\p{Lu}|\d))/gu;

/**
 * A variable's name as a person would say it: "stZone1.rActual" is "Zone1.Actual", and the place in an array of
 * "Temp_Set[2]" is a number behind the name. Never throws.
 */
export function plainTag(name: string): string {
  return name.replace(typeLetters, '').replace(/\[(\d{1,4})\]$/, '_$1');
}
