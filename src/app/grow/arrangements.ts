import { type Edit, edits, type StillhotDocument } from "../../core";
import { say } from "../words/catalogue";
import { t } from "../words/words";
import {
  DEVICE,
  grow,
  HOUSE,
  inTurn,
  kvOf,
  lowVoltsAt,
  newStructure,
  nextLabel,
  single,
  SPAN,
  toNeutralKv,
} from "./growing";
import { placeNext } from "./place";
import { type Answers, kvaFrom, lettersFrom, linkFrom } from "./sizes";

/** Everyday things that are more than one device. */
type Arrangement = (document: StillhotDocument, from: string, phases: string, answers: Answers) => Edit;

const spot = (document: StillhotDocument, from: string, length: number, isBranch = false) => {
  const { x, y } = placeNext(document, from, length, { isBranch });
  return { x, y };
};

/** A building of its own behind the same meter, by a span and a main of its own. */
export const barn: Arrangement = (document, from, phases) =>
  inTurn(say("grow.stamped"), (step, now) => {
    const label = nextLabel(document, "grow.barnLabel");
    const [wall = ""] = step(
      edits.growFrom(
        from,
        "span",
        { ...spot(document, from, HOUSE), kind: "service" },
        { phases, construction: "secondary", lengthM: 40 },
        { label, kind: "service" },
      ),
    );
    const [panel = ""] = step(edits.growFrom(wall, "main", spot(now(), wall, DEVICE), { phases }));
    step(edits.addElement("load", { at: panel }, { phases, label, kw: 5, kvar: 1 }));
  });

/** A light behind the relay that its photocell works: it closes by itself at dusk. */
export const streetLight: Arrangement = (document, from, phases) =>
  inTurn(say("grow.stamped"), (step) => {
    const [lamp = ""] = step(
      edits.growFrom(from, "disconnect", spot(document, from, DEVICE), {
        phases,
        label: nextLabel(document, "grow.relayLabel"),
        gang: true,
        remote: true,
        visibleGap: false,
        open: phases,
        normallyOpen: true,
      }),
    );
    step(edits.addElement("load", { at: lamp }, { phases, label: t("grow.light"), kw: 0.1 }));
  });

/** Three units of their own sizes to one secondary in wye. */
export const unequalUnits: Arrangement = (document, from, _phases, { kva, kvaB, kvaC }) =>
  inTurn(say("grow.stamped"), (step, now) => {
    const unit = (letter: string, said: string | undefined) => ({
      ...single(document, letter, 25),
      ...kvaFrom(said, 25),
      secondary: "two-wire",
      secondaryV: 120,
      label: nextLabel(now(), "grow.transformerLabel"),
    });
    const [low = ""] = step(
      edits.growFrom(from, "transformer", spot(document, from, DEVICE, true), unit("A", kva)),
    );
    step(edits.addElement("transformer", { from, to: low }, unit("B", kvaB)));
    step(edits.addElement("transformer", { from, to: low }, unit("C", kvaC)));
  });

/** Two units that give three phases: open wye, open delta. */
export const openBank: Arrangement = (document, from, phases, answers) =>
  grow("transformer", {
    label: "grow.transformerLabel",
    isBranch: true,
    keys: {
      connection: "openY-openD",
      primaryKv: kvOf(document),
      secondaryV: 240,
      ...kvaFrom(answers.kva, 25, 2),
    },
  })(document, from, lettersFrom(answers, phases));

/** A unit or a bank with two secondaries, each at a point of its own. */
export const twoSecondaries: Arrangement = (document, from, phases, answers) =>
  inTurn(say("grow.stamped"), (step, now) => {
    const isBank = phases === "ABC";
    const letters = isBank ? phases : lettersFrom(answers, phases);
    const [to = ""] = step(edits.addPoint({ ...spot(document, from, DEVICE, true), kind: "pole" }));
    const [alt = ""] = step(edits.addPoint({ ...spot(now(), to, DEVICE, true), kind: "pole" }));
    step(
      edits.addElement(
        "threeWinding",
        { from, to, alt },
        {
          ...(isBank
            ? { phases, connection: "Yg-Yg-D", primaryKv: kvOf(document), secondaryV: 208, thirdV: 480 }
            : { ...single(document, letters, 50), thirdV: 277 }),
          ...kvaFrom(answers.kva, 50, isBank ? 3 : 1),
          label: nextLabel(now(), "grow.transformerLabel"),
        },
      ),
    );
  });

/** Units that only change the primary's volts, 12.47 to 4.16 kV and the like: three to one. */
export const ratioBank: Arrangement = (document, from, phases, answers) => {
  const isBank = phases === "ABC";
  const letters = isBank ? phases : lettersFrom(answers, phases);
  const primaryKv = isBank || letters.length > 1 ? kvOf(document) : toNeutralKv(document);
  return grow("transformer", {
    label: "grow.transformerLabel",
    keys: {
      connection: isBank ? "Yg-Yg" : "single",
      ...(isBank ? {} : { secondary: "two-wire" }),
      primaryKv,
      secondaryV: Math.round((primaryKv * 1000) / 3),
      ...kvaFrom(answers.kva, 50, isBank ? 3 : 1),
    },
  })(document, from, letters);
};

/** The next padmount of a loop: cable, an elbow in, the unit, and an elbow out to which the next cable goes. */
export const padmount: Arrangement = (document, from, phases, answers) =>
  inTurn(say("grow.stamped"), (step, now) => {
    const [pad = ""] = step(
      edits.growFrom(
        from,
        "span",
        { ...spot(document, from, SPAN), kind: "pad" },
        { phases, construction: "cable", lengthM: 60 },
        newStructure(document, from, "pad"),
      ),
    );
    const [bus = ""] = step(edits.growFrom(pad, "elbow", spot(now(), pad, DEVICE), { phases }));
    const [out = ""] = step(edits.growFrom(bus, "elbow", spot(now(), bus, DEVICE), { phases }));
    const letters = lettersFrom(answers, phases);
    step(
      edits.growFrom(bus, "transformer", spot(now(), bus, DEVICE, true), {
        ...single(now(), letters, 25),
        ...kvaFrom(answers.kva, 25),
        label: nextLabel(now(), "grow.transformerLabel"),
      }),
    );
    step(edits.setPointKeys(out, { label: t("grow.loopOut") }));
  });

/** A line that one of two feeds takes, by a switch of two throws. */
export const doubleThrow: Arrangement = (document, from, phases) =>
  inTurn(say("grow.stamped"), (step, now) => {
    const [far = ""] = step(
      edits.addPoint({ ...spot(document, from, DEVICE), kind: "pole", label: t("grow.eitherFeed") }),
    );
    const [other = ""] = step(
      edits.addPoint({
        ...spot(now(), far, SPAN, true),
        kind: "station",
        label: nextLabel(now(), "grow.stationLabel"),
        earthOhms: 1,
      }),
    );
    step(edits.addElement("transfer", { from, alt: other, to: far }, { phases }));
    step(edits.addElement("source", { at: other }, { phases, kvLL: kvOf(document) }));
    step(
      edits.growFrom(
        far,
        "span",
        { ...spot(now(), far, SPAN), kind: "pole", earthOhms: 25 },
        { phases, lengthM: 60 },
        newStructure(document, from, "pole"),
      ),
    );
  });

/** A customer's switch between the utility and a machine of theirs, with what it feeds. */
export const transferWithSet: Arrangement = (document, from, phases) =>
  inTurn(say("grow.stamped"), (step) => {
    const { x, y, direction } = placeNext(document, from, DEVICE, { width: 140 });
    const [cos, sin] = [Math.cos((direction * Math.PI) / 180), Math.sin((direction * Math.PI) / 180)];
    const [panel = ""] = step(edits.addPoint({ x, y, kind: "service" }));
    const [set = ""] = step(
      edits.addPoint({
        x: Math.round(x - cos * 20 - sin * 60),
        y: Math.round(y - sin * 20 + cos * 60),
        kind: "service",
      }),
    );
    step(edits.addElement("transfer", { from, alt: set, to: panel }, { phases }));
    const volts = lowVoltsAt(document, from) ?? 240;
    step(edits.addElement("generator", { at: set }, { phases, kva: phases.length > 2 ? 50 : 10, volts }));
    step(
      edits.addElement(
        "load",
        { at: panel },
        { phases, kw: 4, kvar: 0.8, customers: 1, label: nextLabel(document, "grow.customersLabel") },
      ),
    );
  });

/** A cutout with the link that was said. */
export const cutout: Arrangement = (document, from, phases, answers) =>
  grow("cutout", { label: "grow.cutoutLabel", isBranch: true, keys: linkFrom(answers) })(
    document,
    from,
    phases,
  );
