/** No zone with its sensor in metal climbs or falls faster (common practice). */
export const FASTEST_HEAT_DEG_C_PER_S = 10;
