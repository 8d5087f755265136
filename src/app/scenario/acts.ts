import {
  complete,
  conductorsOf,
  deviceOf,
  type ElementId,
  HAND_TOOLS,
  hasPositions,
  isGroundSet,
  isMachine,
  isOwners,
  isTool,
  jobOf,
  type JsonObject,
  type Owner,
  partingVerbs,
  type PointId,
  type Step,
  stepBy,
  type StepVerb,
  type StillhotDocument,
  takes,
  type VerbThat,
  workPointsOf,
} from "../../core";

/** What a step has to say beside its verb and its thing. */
export type StepDetail =
  | "phases"
  | "tool"
  | "method"
  | "expect"
  | "ground"
  | "first"
  | "text"
  | "seconds"
  | "position";

/** One thing that hands can do with what is chosen, and what else must be said to do it. */
export interface AttemptAct {
  readonly verb: StepVerb;
  readonly step: Step;
  /** letters that it is about unless others are chosen */
  readonly phases: string;
  /** letters to choose from */
  readonly letters: string;
  readonly asks: readonly StepDetail[];
}

const act = (step: Step, phases = "", asks: readonly StepDetail[] = [], letters = phases): AttemptAct => ({
  verb: step.do,
  step,
  phases,
  letters,
  asks,
});

/** Verbs by which a kind is opened and closed, where they are not these two words. */
type Parting = readonly [VerbThat<"opens">, VerbThat<"closes">];

/** Everything that can be tried on what is chosen. Whether it is wise is for the apprentice to find out. */
export function attemptActsFor(document: StillhotDocument, { of, id }: Owner): AttemptAct[] {
  if (of === "workPoint") {
    const at = jobOf(document).workPoints[id]?.at;
    return at === undefined ? [] : actsAt(document, at);
  }
  if (of === "structure") return [act({ do: "inspect", at: id }), act({ do: "barricade", at: id })];
  return of === "point" ? actsAt(document, id) : actsWith(document, id);
}

function actsAt(document: StillhotDocument, at: PointId): AttemptAct[] {
  const letters = (conductorsOf(document.system).get(at) ?? []).join("");
  const phases = letters.replace("N", "");
  const works = workPointsOf(document).filter(([, it]) => it.at === at);
  return [
    act({ do: "inspect", at }),
    ...(phases === ""
      ? []
      : [
          act({ do: "test", at }, phases, ["phases", "expect"], letters),
          act({ do: "ground", at }, phases, ["phases", "ground"]),
        ]),
    act({ do: "barricade", at }),
    ...works.map(([id]) => act({ do: "work", at: id }, "", ["tool", "method"])),
    act({ do: "cover", at }),
    act({ do: "uncover", at }),
    act({ do: "secure", at }),
    act({ do: "ask", at }),
  ];
}

/** What is asked beside a verb that opens or closes: by which method, too, where hands come to the conductor. */
const asksOf = (verb: StepVerb): readonly StepDetail[] =>
  takes(verb, "method") ? ["phases", "tool", "method"] : ["phases", "tool"];

function actsWith(document: StillhotDocument, id: ElementId): AttemptAct[] {
  const saved = document.system.elements[id];
  if (saved === undefined) return [];
  const element = complete(saved);
  const own = element as JsonObject;
  const { phases = "" } = element as { phases?: string };
  if (isGroundSet(element)) return [act({ do: "unground", element: id }, "", ["first"])];
  const { fields } = deviceOf(element.kind);
  const has = (key: string) => Object.hasOwn(fields, key);
  const isOpen = ["open", "cut", "parted"].map((key) => String(own[key] ?? "")).join("");
  const [open, close] = (partingVerbs(element) ?? ["open", "close"]) as Parting;
  const list: AttemptAct[] = [];
  const moves = has("open") || has("cut");
  if (moves && ![...phases].every((it) => isOpen.includes(it)))
    list.push(act(stepBy(open, { element: id }), phases, asksOf(open)));
  if ((moves && isOpen !== "") || isOwners(element))
    list.push(act(stepBy(close, { element: id }), phases, asksOf(close)));
  if (has("parted") && isOpen !== "")
    list.push(act({ do: "join", element: id }, isOpen, ["phases", "method"]));
  if (has("removed"))
    list.push(
      act({ do: "remove-barrel", element: id }, phases, ["phases", "tool"]),
      act({ do: "replace-barrel", element: id }, phases, ["phases", "tool"]),
      act({ do: "refuse", element: id }, phases, ["phases"]),
    );
  if (isMachine(element)) list.push(act({ do: element.on ? "stop" : "start", element: id }));
  if (hasPositions(element))
    list.push(act({ do: "set-position", element: id, position: "off" }, "", ["position"]));
  const isOn = (key: string) => own[key] === true;
  list.push(act({ do: isOn("tagged") ? "untag" : "tag", element: id }));
  // A tag hangs on anything; where the record has no key for it, both have to be offered.
  if (!has("tagged")) list.push(act({ do: "untag", element: id }));
  if (has("blocked")) list.push(act({ do: isOn("blocked") ? "unblock" : "block", element: id }));
  list.push(
    act({ do: "secure", element: id }),
    act({ do: "cover", element: id }),
    act({ do: "uncover", element: id }),
    act({ do: "ask", element: id }),
  );
  return list;
}

/** Steps that need no thing: people, paper, the detector. The radio has its own. */
export const ANYWHERE: readonly AttemptAct[] = [
  act({ do: "brief" }),
  act({ do: "check-detector" }),
  act({ do: "stand-clear" }),
  act({ do: "all-clear" }),
  act({ do: "confirm" }),
  act({ do: "wait", seconds: 300 }, "", ["seconds"]),
];

/** What goes over the radio to the system operator. */
export const ON_THE_RADIO: readonly StepVerb[] = [
  "request-permit",
  "receive-permit",
  "release-permit",
  "ask",
  "confirm",
];

/** What the hands can hold; a detector, a set and a cover are steps of their own. */
export function toolsOf(document: StillhotDocument): readonly string[] {
  const { tools } = jobOf(document);
  return tools.length === 0 ? HAND_TOOLS : tools.filter((it) => !isTool(it) || HAND_TOOLS.includes(it));
}
