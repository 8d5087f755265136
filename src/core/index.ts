/** The only door of the core: everything that the app and the command line may use. */
export * from "./terms";
export * from "./devices";
export * from "./steps";
export * from "./document";
export * from "./notation";
export * from "./import";
export * from "./hazard";
export * from "./piece";
export * from "./procedure";
export * from "./words";
export * from "./doubts";
export * from "./drawing";
export * from "./scenario";
export * from "./sheet";
export * from "./practice";
