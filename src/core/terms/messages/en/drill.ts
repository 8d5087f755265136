/** What the questions of a drill say, and their answers. */
export const drill = {
  "drill.worksheet": "Worksheet",
  "drill.mapOf": "The map, without what is live: {task}",
  "drill.mapOnly":
    "This is the map. It says nothing of what is live, and may be wrong: write beside it what you see, test and are told.",
  "drill.key": "Key to the worksheet",
  "drill.name": "Name",
  "drill.date": "Date",
  "drill.how.one": "One is right.",
  "drill.how.all": "Tick all that are right.",
  "drill.how.order": "Number them in their order.",
  "drill.ask.live": "What is live as drawn?",
  "drill.ask.oneWrong":
    "Everything that isolates is open; nothing is tagged, blocked or grounded. What makes it live by itself, if it happens: {name}?",
  "drill.ask.detector": "What will the detector show at {where}?",
  "drill.ask.tool": "May this be done as drawn, and how much current does it break: {step}?",
  "drill.ask.ground":
    "The section is open, tagged and tested. Where must the ground set stand for the work at: {name}?",
  "drill.ask.order": "Put these steps in order; what comes before them is done.",
  "drill.ask.mistake":
    "A step was left out of this order, or stands in the wrong place. At which step is a rule broken first?",
  "drill.ask.look":
    "Everything that isolates is open; nothing is tagged, blocked or grounded. What would you go and look at first, for the work at: {name}?",
  "drill.look": "whether it can happen that {what}",
  "drill.volts": "about {volts} V",
  "drill.volts.none": "no voltage (under {limit} V)",
  "drill.tool.may": "it may: it breaks about {amps} A",
  "drill.tool.mayNot": "it may not: it would break about {amps} A",
  "drill.way": "through {path}",
  "drill.way.back": "backwards, through {path}",
  "drill.way.induced": "by coupling from a line beside it",
  "drill.why.hot": "{where}: {way}.",
  "drill.why.cold":
    "What nothing that is on reaches, through closed devices or backwards through a transformer, is not live as drawn. It is dead only once tested and grounded.",
  "drill.why.induced": "Nothing feeds it; a line beside it couples into it.",
  "drill.why.detector": "{where} stands at {volts} V to earth.",
  "drill.why.oneWrong": "Each of the others leaves it as it is, as long as nothing else goes wrong.",
  "drill.why.toolMay": "{name}, phase {letter}: {amps} A, and with this in hand it may break {limit} A.",
  "drill.why.toolMayNot":
    "{name}, phase {letter}: {amps} A, and with this in hand it may break {limit} A at the most. Drop the load elsewhere first.",
  "drill.why.ground":
    "A ground set at the work point itself, bonded to the pole, keeps worker and conductor at one voltage; anywhere else the volts along the line stand between them (29 CFR 1910.269(n)(3)).",
  "drill.why.order": "Any other order of these steps breaks a rule.",
  "drill.why.tooEarly": "Too early: {step}: {why} ({citation}).",
  "drill.why.rule": "{why} ({citation}).",
  "drill.why.look":
    "Of these it alone decides whether the conductor is live; the other facts change nothing by themselves.",
  "path.notARecord": "This is no record of what somebody learned.",
  "path.newerRecord": "A newer version wrote this record: update first.",
  "path.brokenRecord": "Entry {n} of this record cannot be read.",
} as const;
