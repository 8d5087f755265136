import { describe, expect, test } from "vitest";
import {
  act,
  type Attempt,
  isObject,
  isRefusal,
  type Json,
  type JsonObject,
  playThrough,
  scenarioOf,
  startAttempt,
  trapsOf,
  xapiOf,
} from "../../src/core";
import { scenarioFile } from "./library";

/*
 * The structure of a statement as the Experience API 1.0.3 (part two, section 2.4) publishes it, in our own words: which
 * properties there are, which must be there, what each holds. A check of structure, not of anybody's server.
 */
const STATEMENT = [
  "id",
  "actor",
  "verb",
  "object",
  "result",
  "context",
  "timestamp",
  "stored",
  "authority",
  "version",
  "attachments",
];
const RESULT = ["score", "success", "completion", "response", "duration", "extensions"];
const CONTEXT = [
  "registration",
  "instructor",
  "team",
  "contextActivities",
  "revision",
  "platform",
  "language",
  "statement",
  "extensions",
];

const isIri = (it: Json | undefined) => typeof it === "string" && /^[a-z][a-z0-9+.-]*:\S+$/i.test(it);
const isUuid = (it: Json | undefined) =>
  typeof it === "string" &&
  /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(it);
const isLanguageMap = (it: Json | undefined) =>
  isObject(it) &&
  Object.entries(it).every(([tag, text]) => /^[a-z]{2,3}(-\w+)*$/i.test(tag) && typeof text === "string");
const isTimestamp = (it: Json | undefined) =>
  typeof it === "string" && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/.test(it);
const isDuration = (it: Json | undefined) =>
  typeof it === "string" && /^P(?=.)(\d+D)?(T(?=.)(\d+H)?(\d+M)?(\d+(\.\d+)?S)?)?$/.test(it);
const hasOnly = (it: JsonObject, keys: readonly string[]) =>
  Object.keys(it).filter((key) => !keys.includes(key));
const hasNull = (it: Json | undefined): boolean =>
  it === null || (typeof it === "object" && Object.values(it).some((member) => hasNull(member as Json)));

function activityProblems(it: Json | undefined, where: string): string[] {
  if (!isObject(it)) return [`${where} is no object`];
  const definition = it["definition"] as JsonObject | undefined;
  return [
    ...(it["objectType"] === undefined || it["objectType"] === "Activity" ? [] : [`${where}.objectType`]),
    ...(isIri(it["id"]) ? [] : [`${where}.id is no IRI`]),
    ...(definition === undefined || isIri(definition["type"]) ? [] : [`${where}.definition.type`]),
    ...(definition?.["name"] === undefined || isLanguageMap(definition["name"])
      ? []
      : [`${where}.definition.name`]),
    ...(definition?.["description"] === undefined || isLanguageMap(definition["description"])
      ? []
      : [`${where}.description`]),
    ...(definition?.["interactionType"] === undefined || definition["interactionType"] === "other"
      ? []
      : [`${where}.interactionType`]),
  ];
}

function resultProblems(it: JsonObject): string[] {
  const score = it["score"] as Readonly<Record<string, number>> | undefined;
  return [
    ...hasOnly(it, RESULT),
    ...(score === undefined ||
    (score["scaled"]! >= -1 &&
      score["scaled"]! <= 1 &&
      score["min"]! <= score["raw"]! &&
      score["raw"]! <= score["max"]!)
      ? []
      : ["result.score"]),
    ...(["success", "completion"].every((key) => ["undefined", "boolean"].includes(typeof it[key]))
      ? []
      : ["result flags"]),
    ...(it["duration"] === undefined || isDuration(it["duration"]) ? [] : ["result.duration"]),
    ...(["undefined", "string"].includes(typeof it["response"]) ? [] : ["result.response"]),
  ];
}

function contextProblems(it: JsonObject): string[] {
  const activities = (it["contextActivities"] ?? {}) as Readonly<Record<string, Json>>;
  return [
    ...hasOnly(it, CONTEXT),
    ...(isUuid(it["registration"]) ? [] : ["context.registration"]),
    ...hasOnly(activities, ["parent", "grouping", "category", "other"]),
    ...Object.values(activities).flatMap((list) =>
      (list as Json[]).flatMap((one) => activityProblems(one, "context activity")),
    ),
    ...Object.keys((it["extensions"] ?? {}) as object).filter((key) => !isIri(key)),
  ];
}

/** What is wrong with a statement; nothing where its structure is right. */
function problemsOf(statement: JsonObject): string[] {
  const { actor, verb, object, result, context } = statement as Readonly<
    Record<string, JsonObject | undefined>
  >;
  const account = actor?.["account"] as JsonObject | undefined;
  return [
    ...hasOnly(statement, STATEMENT),
    ...(hasNull(statement) ? ["a null, which only extensions may hold"] : []),
    ...(isUuid(statement["id"]) ? [] : ["id"]),
    // An agent has exactly one inverse functional identifier; ours is an account.
    ...(isObject(account) && isIri(account["homePage"]) && typeof account["name"] === "string"
      ? []
      : ["actor.account"]),
    ...(isObject(verb) && isIri(verb["id"]) && isLanguageMap(verb["display"]) ? [] : ["verb"]),
    ...activityProblems(object, "object"),
    ...(result === undefined ? [] : resultProblems(result)),
    ...(context === undefined ? [] : contextProblems(context)),
    ...(isTimestamp(statement["timestamp"]) ? [] : ["timestamp"]),
    ...(/^1\.0\.\d+$/.test(String(statement["version"])) ? [] : ["version"]),
  ];
}

const document = scenarioFile("larkfield-storm");
const options = { who: "A. Prentice", startedAt: "2026-05-04T07:30:00Z" };

function asked(attempt: Attempt): Attempt {
  const predicted = act(attempt, { do: "predict", prediction: { live: ["p1/A"] } });
  if (isRefusal(predicted)) throw new Error("refused");
  const said = act(predicted.attempt, { do: "remark", question: "What surprised you?", text: "The tie." });
  if (isRefusal(said)) throw new Error("refused");
  return said.attempt;
}

const aboutObjectives = (statements: readonly JsonObject[]) =>
  statements.filter((it) => String((it["object"] as JsonObject)["id"]).includes(":objective:"));

const verbsOf = (statements: readonly JsonObject[]) =>
  statements.map((it) => String((it["verb"] as JsonObject)["id"]).replace(/^.*\//, ""));

describe("an attempt as statements of the Experience API", () => {
  const solved = playThrough(document, scenarioOf(document).answer!, options).attempt;
  const fell = playThrough(document, trapsOf(document)[0]!.trap.fall!, { ...options, mode: "exam" }).attempt;
  const open = asked(startAttempt(document, options));
  const abandoned = act(open, { do: "abandon" });

  test.each([
    ["solved", solved, ["initialized", "completed", "passed", "terminated"]],
    ["failed", fell, ["initialized", "failed", "terminated"]],
    ["still open", open, ["initialized", "answered", "answered"]],
    [
      "abandoned",
      isRefusal(abandoned) ? open : abandoned.attempt,
      ["initialized", "answered", "answered", "terminated"],
    ],
  ] as const)("%s", (_name, attempt, verbs) => {
    const statements = xapiOf(attempt, { homePage: "https://training.example" });
    const objectives = new Set(aboutObjectives(statements));
    expect(verbsOf(statements.filter((it) => !objectives.has(it)))).toEqual(verbs);
    for (const statement of statements) expect(problemsOf(statement)).toEqual([]);
    expect(new Set(statements.map((it) => it["id"])).size).toBe(statements.length);
    expect(JSON.parse(JSON.stringify(statements))).toEqual(statements);
  });

  test("each objective is a statement of its own, with its points, once the attempt is over", () => {
    const ids = (scenarioOf(document).objectives ?? []).map(({ id }) => id);
    const told = (attempt: Attempt) =>
      aboutObjectives(xapiOf(attempt)).map((it) => [
        String((it["object"] as JsonObject)["id"]).replace(/^.*:/, ""),
        (it["result"] as JsonObject)["success"],
        ((it["result"] as JsonObject)["score"] as JsonObject)["scaled"],
      ]);
    expect(told(solved)).toEqual(ids.map((id) => [id, true, 1]));
    expect(told(fell).some(([, success]) => success === false)).toBe(true);
    expect(told(open)).toEqual([]);
    const [first] = aboutObjectives(xapiOf(solved));
    expect((first!["context"] as JsonObject)["contextActivities"]).toEqual({
      parent: [{ objectType: "Activity", id: `urn:stillhot:scenario:${solved.fingerprint}` }],
    });
  });

  test("times follow the log, and the same attempt gives the same statements", () => {
    const [first, , last] = xapiOf(solved);
    expect(first!["timestamp"]).toBe("2026-05-04T07:30:00Z");
    expect(Date.parse(String(last!["timestamp"]))).toBe(
      Date.parse(options.startedAt) + solved.log.at(-1)!.t * 1000,
    );
    expect(xapiOf(solved)).toEqual(xapiOf(solved));
  });

  test("the check itself finds what is wrong", () => {
    const [right] = xapiOf(solved);
    expect(problemsOf({ ...right, id: "1" })).toEqual(["id"]);
    expect(problemsOf({ ...right, actor: { mbox: "a@b" } })).toEqual(["actor.account"]);
    expect(problemsOf({ ...right, verb: { id: "passed" } })).toEqual(["verb"]);
    expect(problemsOf({ ...right, object: { id: "x y" } })).toEqual(["object.id is no IRI"]);
    expect(problemsOf({ ...right, result: { score: { scaled: 2, raw: 1, min: 0, max: 2 } } })).toEqual([
      "result.score",
    ]);
    expect(problemsOf({ ...right, timestamp: "today", mood: "fine" })).toEqual(["mood", "timestamp"]);
  });
});
