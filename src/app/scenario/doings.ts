import {
  complete,
  conductorsOf,
  deviceOf,
  HAND_TOOLS,
  isTool,
  type ElementId,
  jobOf,
  type Owner,
  type PointId,
  type Step,
  stepBy,
  structureOf,
  type StepVerb,
  type VerbThat,
  workPointsOf,
  type StillhotDocument,
} from "../../core";

/** What a step has to say beside its verb and its thing. */
export type Asked = "phases" | "tool" | "ground" | "first" | "text" | "seconds" | "position";

/** One thing that hands can do with what is chosen, and what else must be said to do it. */
export interface Doing {
  readonly verb: StepVerb;
  readonly step: Step;
  /** letters that it is about unless others are chosen */
  readonly phases: string;
  /** letters to choose from */
  readonly letters: string;
  readonly asks: readonly Asked[];
}

const doing = (step: Step, phases = "", asks: readonly Asked[] = [], letters = phases): Doing => ({
  verb: step.do,
  step,
  phases,
  letters,
  asks,
});

/** Verbs by which a kind is opened and closed, where they are not these two words. */
const OPENS: Readonly<Record<string, readonly [VerbThat<"opens">, VerbThat<"closes">]>> = {
  clamp: ["lift", "attach"],
  lead: ["cut", "join"],
  meter: ["pull", "replace"],
};

/** Everything that can be tried on what is chosen. Whether it is wise is for the apprentice to find out. */
export function doingsFor(document: StillhotDocument, { of, id }: Owner): Doing[] {
  if (of === "workPoint") {
    const at = jobOf(document).workPoints[id]?.at;
    return at === undefined ? [] : doingsAt(document, at);
  }
  if (of === "structure") {
    const [first] = structureOf(document.system, id)?.points ?? [];
    return first === undefined ? [] : doingsAt(document, first);
  }
  return of === "point" ? doingsAt(document, id) : doingsWith(document, id);
}

function doingsAt(document: StillhotDocument, at: PointId): Doing[] {
  const letters = (conductorsOf(document.system).get(at) ?? []).join("");
  const phases = letters.replace("N", "");
  const works = workPointsOf(document).filter(([, it]) => it.at === at);
  return [
    doing({ do: "inspect", at }),
    ...(phases === ""
      ? []
      : [
          doing({ do: "test", at }, phases, ["phases"], letters),
          doing({ do: "ground", at }, phases, ["phases", "ground"]),
        ]),
    doing({ do: "barricade", at }),
    ...works.map(([id]) => doing({ do: "work", at: id }, "", ["tool"])),
    doing({ do: "cover", at }),
    doing({ do: "uncover", at }),
    doing({ do: "secure", at }),
    doing({ do: "ask", at }),
  ];
}

function doingsWith(document: StillhotDocument, id: ElementId): Doing[] {
  const saved = document.system.elements[id];
  if (saved === undefined) return [];
  const element = complete(saved);
  const { kind, phases = "" } = element as { kind: string; phases?: string };
  if (kind === "ground") return [doing({ do: "unground", element: id }, "", ["first"])];
  const { fields } = deviceOf(element.kind);
  const has = (key: string) => Object.hasOwn(fields, key);
  const isOpen = ["open", "cut", "parted"].map((key) => String((element as never)[key] ?? "")).join("");
  const [open, close] = OPENS[kind] ?? (["open", "close"] as const);
  const list: Doing[] = [];
  const moves = has("open") || has("cut");
  if (moves && ![...phases].every((it) => isOpen.includes(it)))
    list.push(doing(stepBy(open, { element: id }), phases, ["phases", "tool"]));
  if ((moves && isOpen !== "") || kind === "main")
    list.push(doing(stepBy(close, { element: id }), phases, ["phases", "tool"]));
  if (has("parted") && isOpen !== "") list.push(doing({ do: "join", element: id }, isOpen, ["phases"]));
  if (kind === "cutout")
    list.push(
      doing({ do: "remove-barrel", element: id }, phases, ["phases", "tool"]),
      doing({ do: "replace-barrel", element: id }, phases, ["phases", "tool"]),
      doing({ do: "refuse", element: id }, phases, ["phases"]),
    );
  if (kind === "generator")
    list.push(doing({ do: (element as { on?: boolean }).on === true ? "stop" : "start", element: id }));
  if (kind === "transfer")
    list.push(doing({ do: "set-position", element: id, position: "off" }, "", ["position"]));
  const isOn = (key: string) => (element as never)[key] === true;
  list.push(doing({ do: isOn("tagged") ? "untag" : "tag", element: id }));
  // A tag hangs on anything; where the record has no key for it, both have to be offered.
  if (!has("tagged")) list.push(doing({ do: "untag", element: id }));
  if (has("blocked")) list.push(doing({ do: isOn("blocked") ? "unblock" : "block", element: id }));
  list.push(
    doing({ do: "secure", element: id }),
    doing({ do: "cover", element: id }),
    doing({ do: "uncover", element: id }),
    doing({ do: "ask", element: id }),
  );
  return list;
}

/** Steps that need no thing: people, paper, the detector. The radio has its own. */
export const ANYWHERE: readonly Doing[] = [
  doing({ do: "brief" }),
  doing({ do: "check-detector" }),
  doing({ do: "stand-clear" }),
  doing({ do: "all-clear" }),
  doing({ do: "confirm" }),
  doing({ do: "wait", seconds: 300 }, "", ["seconds"]),
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
