/** What an edit refuses or is told of afterwards, by what is loaded when it is asked for. */
export const edits = {
  "removed.workPoint": "the work point {name} went with it",
  "removed.steps": "steps that named what is gone were taken out: {count}",
  "removed.onIt": "With {name} goes what is on it and the line to it: {things}",
  "phase.joined":
    "what lies behind {name} is joined to the rest another way as well: take that away first, or each part has to be changed by itself",
  "tidy.nothing": "There is no point to lay out: nothing is drawn, or everything is pinned.",
  "stamp.nothing": "Select at least one line or device with two ends: an arrangement joins by a point.",
  "stamp.noJoin": "The point to join by is not part of what is selected.",
  "stamp.apart": "It is in pieces: nothing that is selected joins {name} to the rest.",
  "stamp.alone": "On its own it is no drawing that can be read: {problem}.",
  "stamp.unfit": "{name} needs the phases {phases} here.",
  "stamp.unreadable": "What was kept cannot be read.",
  "stamp.placed": "Add {name}",
} as const;
