/** Every conductor of every point leaks this to earth, so that islands solve [S]. The file format's own figure. */
export const LEAK_SIEMENS = 1e-9;

/** A node inside an element leaks this, far below anything that could be measured, so that a parked capacitor solves [S]. */
export const INNER_LEAK_SIEMENS = 1e-13;

/** Largest change of any load's volts in a whole step, relative to its rated volts, at which the iteration of `I` and `PQ` loads has settled. */
export const LOAD_SETTLED = 1e-6;

/** The same at which nothing is left to be gained by another round. */
export const LOAD_AT_REST = 1e-8;

/** Rounds after which loads that still move are taken as constant impedance, with a warning. */
export const MOST_LOAD_ROUNDS = 25;

/** A round that moves the loads' volts by more than this share of what the round before moved them halves the step [1]. */
export const SLOW_SHARE = 0.9;

/** The least part of a step that the loads' iteration takes [1]. */
export const LEAST_LOAD_STEP = 1 / 16;

/** Below this share of rated volts a load is the impedance that draws there what its model draws at this share. */
export const LOAD_FLOOR = 0.7;

/** Current left over at a node, relative to what flows through it, above which a solution is refined [1]. */
export const KCL_TOLERANCE = 1e-9;

/** A closed device across two conductors that others hold at different volts is a dead short: the file format's own ohms for one [Ω]. */
export const CONTRADICTION_OHMS = 0.01;

/** A solidly earthed neutral: so much that its volts vanish beside any other, and no more, so that pivots stay finite [S]. */
export const SOLID_EARTH_SIEMENS = 1e9;

/** Put on the diagonal of an impedance matrix that has no inverse [Ω]. */
export const LEAST_OHMS = 1e-6;

/** How far from the unit matrix a matrix times its inverse may be [1]. */
export const INVERSE_WITHIN = 1e-6;

/** Ratios of ideal joins around a loop that differ by less are the same [1]. */
export const SAME_RATIO = 1e-9;

/** How near the shares come to the least sum of squares: what is left over what was asked [1]. */
export const LOOPS_SHARED_WITHIN = 1e-13;

/** So many kinds of line are remembered; one more, and all are forgotten. */
export const MOST_LINES_KNOWN = 5000;
