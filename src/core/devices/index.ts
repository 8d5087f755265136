export * from "./kinds";
export * from "./define";
export * from "./faces";
export type {
  Complete,
  EqualSource,
  Field,
  FieldContext,
  FieldProblem,
  Fields,
  Fuse,
  Input,
  FieldReading,
} from "./fields";
export * as field from "./fields";
export * from "./parts";
export * from "./symbol";
export { offBy, ROD_OFF_BY, isSplit, normalAngleDegrees, voltsToNeutral } from "./shared";
export { GROUNDING_CABLES } from "./ground";
export { rateOf, type TransformerRating } from "./transformer";
export { leakageSharesOf } from "./threeWinding";
export { type StandardSwitch, standardSwitchOf } from "./standard";
export { gangIsWhole } from "./disconnect";
