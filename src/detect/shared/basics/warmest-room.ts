/** No plant room is hotter; a set point or reading below it calls for no heat (common practice). */
export const WARMEST_ROOM_DEG_C = 45;
