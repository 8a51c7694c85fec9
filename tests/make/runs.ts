/** How often a property is tried: seldom in the quick tests (`vitest.quick.config.ts` sets QUICK_TESTS), more in all of them. */
export function runsOf(quick: number, whole: number): number {
  return process.env['QUICK_TESTS'] === undefined ? whole : quick;
}
