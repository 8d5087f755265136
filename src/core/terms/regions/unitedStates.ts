import type { Region } from "./region";

/** The words of the rule that crews in the United States are held to, and what they say beside it. */
export const unitedStates: Region = {
  name: "United States",
  words: [
    // 29 CFR 1910.269(m)(3): asked for, held, handed over and released is a clearance.
    { one: ["permit", "clearance"], many: ["permits", "clearances"], article: "a" },
    // 29 CFR 1910.269(c): a job briefing is held before each job.
    { one: ["tailboard", "job briefing"], many: ["tailboards", "job briefings"], article: "a" },
    // Common practice, no source.
    { one: ["barrel", "fuse door"], many: ["barrels", "fuse doors"], article: "a" },
  ],
  sentences: {
    "guide.word.cutout.also":
      "Also: drop-out fuse, expulsion fuse (Britain, Australia). Its fuse door: barrel (elsewhere in North America).",
    "guide.word.permit.also":
      "Also: permit (elsewhere in North America); permit to work (Britain); access permit (Australia, New Zealand).",
    "guide.word.tailboard.also":
      "Also: tailboard, tailgate (North America); toolbox talk (Britain, Australia).",
  },
  // It tells what the option is for.
  kept: ["cli.overview"],
};
