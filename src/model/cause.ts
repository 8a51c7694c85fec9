/** Where a fault lies, and `none` for no fault. The order is the order of columns and of probability vectors. */
export const causes = ['sensor', 'wiring', 'input', 'heater', 'recording', 'none'] as const;

export type Cause = (typeof causes)[number];

/** One probability per cause; they sum to 1. */
export type Probabilities = Readonly<Record<Cause, number>>;
