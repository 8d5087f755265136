export * from "./tolerances";
export {
  AS_DRAWN,
  isLinear,
  magnitudeAt,
  modelAmps,
  type Solution,
  solutionOf,
  solve,
  solveFactored,
  voltsAt,
} from "./solve";
export { ampsAtPoint, elementAmps, type ElementAmps } from "./currents";
export { idealGroups, assemble, type Assembled, type Nodal, nodalOf, type Variant } from "./nodal";
export { type Carried, Carrier, type Factor } from "./ldlt";
export { stretchElectrical } from "./stretch";
export { portsOfRejoin } from "./rejoin";
export { EARTH_OHM_METRES, primitiveOhmsPerKm, type LineConductor } from "./carson";
export { kronReduce } from "./matrix";
export { type FaultAmps, faultAmpsAt } from "./faults";
