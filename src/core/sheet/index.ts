export * from "./sentences";
export * from "./briefing";
export * from "./link";
export * from "./svgLink";
export { type CodePicture, codePicture } from "./code";
export { sheetHtml, type SheetOptions } from "./sheetHtml";
export {
  groundsWorthSentence,
  lookFirstSentence,
  placeName,
  rangesSentence,
  wayRangeSentence,
} from "./lookFirst";
