/** Below this nothing is broken that anybody could see: leakage, and the charge of a few spans [A]. */
export const NO_AMPS = 0.01;

/** Less than this parts no cable that anybody grounds with [A]: the smallest of the table withstands ten times as much. */
export const LEAST_DUTY_AMPS = 500;

/** A threat that takes so many things at once still has to be held by the grounds. */
export const MOST_STRENGTH_HELD = 2;

/** Above it nobody's hands come to what is live to save a step: it is done with sticks [V]. */
export const MOST_VOLTS_BY_HAND = 600;

/** Looks at one way of standing that are kept; a job has a few tests and barricades, not more. */
export const MOST_LOOKS = 64;

/** More than a job has positions; beyond it what is remembered is begun anew. */
export const MOST_REMEMBERED = 1000;

/** Sets of openings looked at before the search gives up: a hundred devices take a few dozen. */
export const MOST_SETS = 3000;

/** Sets that are looked at beyond those asked for, since what closes again before the work makes a dearer one cheaper. */
export const MOST_SETS_BEYOND = 4;

/** Open things that are tried as a supply from the other side. */
export const MOST_SUPPLIES_TRIED = 8;

/** Open things that are closed at once as a supply from the other side. */
export const MOST_TIES = 2;

/** Other ways that are tried. */
export const MOST_WAYS_TRIED = 4;

/** Other ways that are told. */
export const MOST_ALTERNATIVES = 3;

/** Beginnings of an order that are walked on side by side; all there are of a job at five or six places. */
export const MOST_WALKS = 200;

/** Rounds of repair before a plan is told as it is, with what the rules still find in it. */
export const MOST_ROUNDS = 16;

/** Threats that are listed with their controls; every one of them costs several assessments. */
export const MOST_THREATS = 8;

/** Controls that are listed with a threat. */
export const MOST_CONTROLS = 6;

/** Places tried for a ground that would be enough: each is a whole assessment. */
export const MOST_PLACES = 6;
