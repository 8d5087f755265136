export { cutAround, type CutPart, type Cutting, placeOf } from "./cutAround";
export { likeTheWhole, pieceAround, type VerifiedCutting } from "./likeTheWhole";
export { standsAsOnAMap } from "./laidOutWhereCrowded";
export { type Called, calledSo } from "./calledSo";
export { checksTold, partTold, type PartTold, pieceTold } from "./told";
