/** Threats are sought up to this strength: all of them, not a sample. */
export const MOST_STRENGTH = 3;

/** Up to so many sets are each asked; above it, sets of small supplies are ruled out by what they do one by one. */
export const MOST_SETS_ASKED_ONE_BY_ONE = 600;

/** The work that one search may be, in multiplications: ten seconds or so, after which it says how far it came. */
export const MOST_WORK = 3e7;

/** Sets by which a source reaches that are told beside, where a search cannot ask all sets. */
export const MOST_WAYS_TOLD = 2000;

/** How near to a limit a proposal on constant-impedance loads may come before the loads' own models are asked. */
export const MODEL_BAND = 3;

/** The same where loads are impedances: what floats is known to a few digits only until it is asked plainly. */
export const ROUGH_BAND = 1.01;

/** So many times under each limit what a set does is far from it, and an estimate to many digits says enough [1]. */
export const FAR_BAND = 1.5;

/** What a plain solution takes for each node, in multiplications: measured, to weigh it against a quick one. */
export const COST_OF_A_NODE = 50;

/** Slack on the sum of what supplies do one by one: capacitance can make two do more than the sum, never this much. */
export const SLACK = 3;

/** From so much on of what two upsets have to themselves, squared, that they share, what both do is no sum of what each does [1]. */
export const CLOSE = 1e-2;

/** Above this the way back from a port is leaks and little else: factors of a network of ohms keep it to a few digits only [Ω]. */
export const FLOATING_OHMS = 1e6;

/** So many ground sets that are over their rating at once are taken to part one by one or together, in every order [1]: four have 16 stages. */
export const MOST_SETS_PARTING_IN_TURN = 4;

/** So many faults that works of a job mend are each taken for there or gone, in every choice [1]: three make eight drawings. */
export const MOST_MENDED_IN_ANY_ORDER = 3;

/** So many times the volts as drawn those at the worst angles have to be before they are told [1]. */
export const WORTH_TELLING = 1.01;

/** So many times its own volts a leg may have to the neutral before what hangs on it suffers [1]: ANSI C84.1, from memory. */
export const MOST_OVER = 1.1;

/** Above it a conductor is the line's, below it a service's or a plant's [V, line to line]. */
export const LINE_VOLTS = 1000;

/** A dead short's remains have an angle too: below this there is no supply to be out of step with [V]. */
export const LEAST_SUPPLY_VOLTS = 50;

/** Beyond this two supplies are not joined [°]: a common setting of a synchronism check (from memory). */
export const MOST_DEGREES = 20;

/** Of the higher of two volts, so much apart they are two voltages: drops and regulators make less [1]. Common practice, no source. */
export const MOST_APART = 0.25;

/**
 * Volts over so many times what the highest supply makes are a resonance with a core that would saturate first. Sustained
 * ferroresonance was reported at up to four or five times (IEEE C57.105, from memory).
 */
export const MOST_OF_SUPPLIED = 5;

/** Above this a motor is short of a phase [1, of the mean]: at 5 % it is not to be run at all (NEMA MG 1, 14.36, from memory), and loads alone bring a few. */
export const MOST_UNBALANCE = 0.1;

/** Below this share of its volts a motor stands still, whatever they are between its phases [1]. */
export const LEAST_MEAN = 0.2;
