import { type Finding, say } from "../terms";
import { endPointsOf } from "./elementsAt";
import {
  calledAlike,
  elementName,
  labelIn,
  nameIn,
  nameOnStructure,
  pointName,
  structureName,
} from "./names";
import { isCrowded, structureOfPoint, structuresOf } from "./structures";
import type { SavedElement, System } from "./types";

/** What a drawing says of its names and structures that a person would be misled by: it is read all the same. */
export const doubtsOf = (system: System): readonly Finding[] => [
  ...namedTwice(system),
  ...onElsewhere(system),
  ...ofOneId(system),
  ...crowded(system),
];

const MOST_NAMED = 8;

/** Things that a person would take for one another, a warning for each name that several have. */
const namedTwice = (system: System): Finding[] =>
  calledAlike(system).map((ids) => ({
    rule: "name-twice",
    severity: "warning",
    where: ids.slice(0, MOST_NAMED).join(", "),
    message: say("file.nameTwice", { name: labelIn(system, ids[0]!), count: ids.length }),
    help: say("file.nameTwice.help"),
    citation: "file format",
  }));

/** Devices that say that they are on a structure at which they have no end. */
const onElsewhere = (system: System): Finding[] =>
  Object.entries<SavedElement>(system.elements)
    .filter(([, saved]) => typeof saved["on"] === "string")
    .filter(([, saved]) => endPointsOf(saved).every((it) => structureOfPoint(system, it)?.id !== saved["on"]))
    .map(([id, saved]) => ({
      rule: "on-elsewhere",
      severity: "warning",
      where: id,
      message: say("file.onElsewhere", {
        name: nameOnStructure({ system }, id),
        structure: nameIn({ system }, saved["on"] as string),
      }),
      help: say("file.onElsewhere.help"),
      citation: "file format",
    }));

/** A point and a device of one id: a step that says where, and one that says what, could be taken for each other. */
const ofOneId = (system: System): Finding[] =>
  Object.keys(system.elements)
    .filter((id) => Object.hasOwn(system.points, id))
    .map((id) => ({
      rule: "id-twice",
      severity: "warning",
      where: id,
      message: say("file.idTwice", {
        point: pointName({ system }, id),
        element: elementName({ system }, id),
      }),
      help: say("file.idTwice.help"),
      citation: "file format",
    }));

/** Structures on which so much is that a picture shows them as one mark. */
const crowded = (system: System): Finding[] =>
  [...structuresOf(system).values()].filter(isCrowded).map((it) => ({
    rule: "crowded-structure",
    severity: "warning",
    where: it.id,
    message: say("file.crowded", {
      structure: structureName({ system }, it.id),
      devices: it.elements.length,
      points: it.points.length,
    }),
    help: say("file.crowded.help"),
    citation: "file format",
  }));
