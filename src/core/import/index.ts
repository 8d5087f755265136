export { type Changes, whatChanged } from "./whatChanged";
export { type Exported, exportMap, exportModel } from "./exportDrawing";
export {
  type ImportCounts,
  type Imported,
  type ImportOptions,
  type ImportRefused,
  importMap,
  isImportRefused,
  ModelImport,
} from "./importModel";
export type { LedgerEntry, LedgerSide } from "./ledger";
export { NEUTRAL_WAYS, type NeutralWay } from "./neutral";
