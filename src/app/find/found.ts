import {
  alsoCalled,
  type ElementId,
  type Owner,
  REGION_IDS,
  REGIONS,
  structureOf,
  structuresOf,
} from "../../core";
import type { Demo } from "../keep/demos";
import { MENU, PLACES } from "../frame/places";
import type { Session } from "../session/session.svelte";
import { preferences } from "../settings/preferences.svelte";
import type { SketchAct } from "../sketch/acts";
import type { MessageKey } from "../words/catalogue";
import { LANGUAGES, type Language, speech } from "../words/language.svelte";
import { elementName, pointName, firstOf, structureName, t } from "../words/words";
import { COMMAND_GROUPS, type CommandGroup, NAMES } from "../commands/names";
import { type Obstacle, whyNot } from "../commands/reasons";
import { commands, type SketchCommand, type SketchCommands } from "../commands/registry";

/** One line of the finder. */
export interface Found {
  readonly id: string;
  readonly group: CommandGroup;
  readonly label: string;
  /** what else finds it: what its group is called, other words for what it does, and how a region calls that */
  readonly around: string;
  readonly keys: readonly string[];
  /** why it cannot be done now, if it cannot */
  readonly why: string | undefined;
  readonly run: () => void;
}

/** What the finder is given by the parts of the app. */
export interface Offers {
  readonly session: Session;
  /** what Sketch can do; nothing while another place is shown */
  readonly sketch:
    | {
        readonly commands: SketchCommands;
        readonly acts: readonly SketchAct[];
      }
    | undefined;
  readonly menu: readonly { readonly id: string; readonly label: string; readonly run: () => void }[];
  readonly demos: readonly Demo[];
  readonly print: () => void;
  readonly go: (place: string) => void;
  readonly openDemo: (id: string) => void;
}

/** Everything that can be done in the app, group by group, each with its keys and with why not. */
export function everyCommand(offers: Offers): Found[] {
  const all = [
    ...selectedActions(offers),
    ...sketchCommands(offers),
    ...menuItems(offers),
    ...places(offers),
    ...demoItems(offers),
    ...settings(),
  ];
  return all
    .filter(({ id }, index) => all.findIndex((it) => it.id === id) === index)
    .sort((one, other) => COMMAND_GROUPS.indexOf(one.group) - COMMAND_GROUPS.indexOf(other.group));
}

/** Every structure, device and place of the drawing by its name, each of which is gone to; only where it is drawn. */
export function everyThing({ session, sketch }: Offers): Found[] {
  if (sketch === undefined) return [];
  const { document } = session;
  const { system } = document;
  const wordsOf = kindWords();
  const line = (label: string, owner: Owner): Found => ({
    id: `thing-${owner.of}-${owner.id}`,
    group: "thing",
    label,
    around: wordsOf(structureOf(system, owner.id)?.kind),
    keys: [],
    why: undefined,
    run: () => session.select(owner),
  });
  return [...structuresOf(system).values()]
    .flatMap((structure) => {
      const { id, points } = structure;
      const name = structureName(document, id);
      // A point that is called as its structure is would be the same line twice.
      const others = points.filter((it) => points.length > 1 && pointName(document, it) !== name);
      return [
        line(name, { of: "structure", id }),
        ...others.map((it) => line(pointName(document, it), { of: "point", id: it })),
      ];
    })
    .concat(
      (Object.keys(system.elements) as ElementId[]).map((id) =>
        line(elementName(document, id), { of: "element", id }),
      ),
    );
}

/** A pole, and what is on one, is typed with its word in whichever language its drawing was labelled. */
function kindWords(): (kind: string | undefined) => string {
  const known = new Map<string, string>();
  return (kind = "") => {
    const words = known.get(kind) ?? `${t("command.group.thing")} ${firstOf(`find.also.${kind}`) ?? ""}`;
    known.set(kind, words);
    return words;
  };
}

const WHY: Readonly<Record<Obstacle, MessageKey>> = {
  selection: "find.needsSelection",
  points: "find.needsSelection",
  one: "find.needsOne",
  point: "find.needsPoint",
  drawing: "find.needsDrawing",
  workPoint: "find.needsWorkPoint",
  threat: "find.needsThreat",
  undo: "find.noUndo",
  redo: "find.noRedo",
  readOnly: "find.readOnly",
};

const keysOf = (id: string): readonly string[] => commands.find((it) => it.id === id)?.keys ?? [];

function found(id: string, group: CommandGroup, label: string, run: () => void): Found {
  const around = `${t(`command.group.${group}`)} ${firstOf(`find.also.${id}`) ?? ""}`;
  const elsewhere = alsoCalled(Object.values(REGIONS), `${label} ${around}`);
  return {
    id,
    group,
    label,
    around: [around, ...elsewhere].join(" "),
    run,
    keys: keysOf(id),
    why: undefined,
  };
}

/** What the bar of acts offers and the registry has no name for: it is about one thing of its kind. */
const selectedActions = ({ sketch }: Offers): Found[] =>
  (sketch?.acts ?? [])
    .filter((it) => !(it.id in NAMES))
    .map((it) => ({
      ...found(it.id, "selected", it.label, it.run),
      why: it.disabled === true ? t("find.notNow") : undefined,
    }));

function sketchCommands({ session, sketch }: Offers): Found[] {
  return commands.flatMap((it) => {
    const { title, group, unlisted } = NAMES[it.id];
    if (it.where === "app" || unlisted === true) return [];
    const id = it.id as keyof SketchCommands;
    const obstacle = whyNot(session, id);
    const why = obstacle === undefined ? undefined : t(WHY[obstacle]);
    return {
      ...found(id, group, t(title), () => sketch?.commands[id]()),
      why: sketch === undefined ? t("find.inSketch") : why,
    };
  });
}

const MENU_GROUPS: Readonly<Record<string, CommandGroup>> = {
  help: "help",
  legend: "help",
  keys: "help",
  settings: "setting",
  theme: "setting",
};

const menuItems = ({ menu, print }: Offers): Found[] => [
  ...menu
    .filter((it) => it.id !== "find" && !(it.id in NAMES && NAMES[it.id as SketchCommand].group !== "file"))
    .map((it) => found(it.id, MENU_GROUPS[it.id] ?? "file", it.label, it.run)),
  { ...found("print", "file", t("share.print"), print), keys: ["Ctrl+p"] },
];

const places = ({ go }: Offers): Found[] =>
  PLACES.map((it) => ({
    ...found(`place-${it.id}`, "go", t("find.place", { place: t(it.title) }), () => go(it.id)),
    keys: MENU.includes(it) ? [String(MENU.indexOf(it) + 1)] : [],
  }));

const demoItems = ({ demos, openDemo }: Offers): Found[] =>
  demos.map(({ id, title }) => found(`demo-${id}`, "demo", t("find.demo", { title }), () => openDemo(id)));

function settings(): Found[] {
  const { glove, singleKeys, units, hand, region } = preferences;
  const set = (id: string, label: string, change: Parameters<typeof preferences.set>[0]) =>
    found(id, "setting", label, () => preferences.set(change));
  return [
    set("glove", t(glove ? "find.gloveOff" : "find.gloveOn"), { glove: !glove }),
    set("singleKeys", t(singleKeys ? "find.singleOff" : "find.singleOn"), { singleKeys: !singleKeys }),
    units === "metric"
      ? set("units", t("find.imperial"), { units: "imperial" })
      : set("units", t("find.metric"), { units: "metric" }),
    hand === "right"
      ? set("hand", t("find.leftHand"), { hand: "left" })
      : set("hand", t("find.rightHand"), { hand: "right" }),
    ...(region === "usual" ? [] : [set("region-usual", t("find.regionUsual"), { region: "usual" })]),
    ...REGION_IDS.filter((it) => it !== region).map((it) =>
      set(`region-${it}`, t("find.region", { region: REGIONS[it].name }), { region: it }),
    ),
    ...(Object.keys(LANGUAGES) as Language[])
      .filter((it) => it !== speech.language)
      .map((it) => set(`language-${it}`, t("find.language", { language: LANGUAGES[it] }), { language: it })),
  ];
}
