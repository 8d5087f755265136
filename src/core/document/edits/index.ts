export { addElement, type Ends, growFrom } from "./addElement";
export { addGround } from "./addGround";
export { addPoint } from "./addPoint";
export { nextElementId, nextPointId, together } from "./change";
export { changePhase } from "./changePhase";
export { block, tag, turnOff, turnOn, unblock, untag } from "./flags";
export { noteChange, setJobLog } from "./jobLog";
export { movePoints, onGrid, placePoints } from "./movePoints";
export { close, open } from "./operate";
export { pin, unpin } from "./pin";
export { copyOf, duplicate, type Fragment, paste, readFragment, writeFragment } from "./paste";
export { leftToProgram, placeStructures, unplaceAll } from "./placeStructures";
export { reconnect } from "./reconnect";
export {
  joinsOf,
  MOST_STAMP_NAME,
  placeStamp,
  readStamp,
  type Stamp,
  stampOf,
  stampPhases,
  writeStamp,
  type WrittenStamp,
} from "./stamp";
export { putBack } from "./putBack";
export { removeThings, type Things } from "./removeThings";
export { turnedLetters } from "./letterTurn";
export { replaceBy } from "./replaceBy";
export { seeStructure, setStructureKeys } from "./structures";
export { setElementKeys, setPointKeys } from "./setKeys";
export { setPosition } from "./setPosition";
export { setLimit, setRule } from "./setRules";
export { setFrequency, setJob, setNotes, setScenario, setSteps, setTitle } from "./setWords";
export { addWorkPoint, setWorkPoint } from "./workPoints";
