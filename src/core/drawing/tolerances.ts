/** A drawing lies otherwise than the one tried before only where it is worth so much more. */
export const WORTH_IT = 0.1;

/** Length of a symbol that one can read at arm's length on a screen [px]. */
export const LARGE_ENOUGH = 32;

/** Shorter than this symbols have the room of the names beside them [px]. */
export const ARMS_LENGTH = 26;

/** Shorter than this no symbol is drawn: its structure is one mark [px]. */
export const LEAST_SYMBOL = 20;

/** Where symbols would be shorter than this, marks of structures cover each other: a section is one mark [px]. */
export const LEAST_STRUCTURE = 6;

/** For letters of this size a part of a drawing is laid out well. */
export const PART_BY_PART = 1.5;

/** Of more elements than these nobody sees the letters while all is shown. */
export const MANY_ELEMENTS = 300;

/** Above so many elements laying all of them anew is as quick. */
export const MOST_LAID_AGAIN = 2000;

/** So many revised entries are looked through beside the others; beyond, all are put into one map again. */
export const MOST_REVISED = 1000;

/** So many conductors' pieces take a good part of a frame to draw. */
export const MANY_OTHERWISE = 300;

/** Less than this is noise of the solution, or charging that no arrow should tell of [W]. */
export const LEAST_WATTS = 1;

/** Nearer than this a stretch seems to touch a point that it has no end at, and two points seem one. */
export const TOUCHING = 24;

/** Loops beyond this many are drawn as they come. */
export const MOST_LOOPS = 30;

/** How many places of a loop are tried as the one where its line turns. */
export const MOST_TURNS = 12;

/** With more places than these the line of a loop turns nowhere for its tie: each try lays all of it out anew. */
export const MOST_PLACES_TRIED = 1000;

/** How often what taps on their sides make is laid out again, to see whether it stays. */
export const MOST_ROUNDS = 4;

/** A point within reach wins over an element within reach, since elements end at points and not the other way. */
export const POINT_ADVANTAGE = 0.6;
