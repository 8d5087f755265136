import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { DEVICES } from "../devices";
import { readDocument, writeDocument } from "../document";
import { spell } from "../../../tests/support/words";
import {
  assess,
  done,
  importMapFile,
  importModel,
  importText,
  reasons,
} from "../../../tests/support/imported";
import { importMap } from "./importModel";

const RDF = `xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"`;
const CIM = `xmlns:cim="http://iec.ch/TC57/CIM100#"`;

const header = (profile: string) =>
  `<md:FullModel xmlns:md="http://iec.ch/TC57/61970-552/ModelDescription/1#" rdf:about="urn:uuid:0"><md:Model.profile>${profile}</md:Model.profile></md:FullModel>`;

describe("a file that is no model is refused with one reason", () => {
  test.each([
    ["a document type", `<!DOCTYPE x [<!ENTITY a "b">]><rdf:RDF ${RDF}/>`, /document type is not accepted/],
    [
      "an entity bomb",
      `<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><rdf:RDF ${RDF}>&b;</rdf:RDF>`,
      /document type/,
    ],
    ["cut off", `<rdf:RDF ${RDF} ${CIM}><cim:Breaker rdf:ID="_a">`, /not whole or not XML/],
    [
      "an entity of its own",
      `<rdf:RDF ${RDF} ${CIM}><cim:Breaker rdf:ID="_a"><cim:IdentifiedObject.name>&x;</cim:IdentifiedObject.name></cim:Breaker></rdf:RDF>`,
      /not whole or not XML/,
    ],
    ["another document", `<html/>`, /begins with <html>/],
    ["nothing in it", `<rdf:RDF ${RDF}/>`, /no object of the standard/],
    [
      "a change to a model",
      `<rdf:RDF ${RDF} xmlns:dm="http://iec.ch/2002/schema/CIM_difference_model#"><dm:DifferenceModel rdf:about="#x"/></rdf:RDF>`,
      /a change to a model/,
    ],
    [
      "too old",
      `<rdf:RDF ${RDF} xmlns:cim="http://iec.ch/TC57/2009/CIM-schema-cim14#"><cim:Breaker rdf:ID="_a"/></rdf:RDF>`,
      /version 14/,
    ],
    [
      "two classes",
      `<rdf:RDF ${RDF} ${CIM}><cim:Breaker rdf:ID="_a"/><cim:Fuse rdf:about="#_a"/></rdf:RDF>`,
      /both a Breaker and a Fuse/,
    ],
    [
      "two values",
      `<rdf:RDF ${RDF} ${CIM}><cim:Breaker rdf:ID="_a"><cim:Switch.open>true</cim:Switch.open></cim:Breaker><cim:Breaker rdf:about="#_a"><cim:Switch.open>false</cim:Switch.open></cim:Breaker></rdf:RDF>`,
      /both "true" and "false"/,
    ],
    [
      "another schema",
      `<rdf:RDF ${RDF} xmlns:cim="http://example.org/CIM999#"><cim:Breaker rdf:ID="_a"/></rdf:RDF>`,
      /its objects are of http:\/\/example\.org\/CIM999#/,
    ],
    [
      "volts under a header in kilovolts",
      `<rdf:RDF ${RDF} ${CIM}>${header("http://entsoe.eu/CIM/EquipmentCore/3/1")}<cim:BaseVoltage rdf:ID="_v"><cim:BaseVoltage.nominalVoltage>12470</cim:BaseVoltage.nominalVoltage></cim:BaseVoltage></rdf:RDF>`,
      /12470 kV is more than any line has/,
    ],
    [
      "no units under a header that says nothing of them",
      `<rdf:RDF ${RDF} ${CIM}>${header("http://example.org/profile/9")}<cim:BaseVoltage rdf:ID="_v"><cim:BaseVoltage.nominalVoltage>12</cim:BaseVoltage.nominalVoltage></cim:BaseVoltage><cim:EnergyConsumer rdf:ID="_l"><cim:EnergyConsumer.p>1.5</cim:EnergyConsumer.p></cim:EnergyConsumer></rdf:RDF>`,
      /in which units/,
    ],
    [
      "no units",
      `<rdf:RDF ${RDF} ${CIM}><cim:BaseVoltage rdf:ID="_v"><cim:BaseVoltage.nominalVoltage>12</cim:BaseVoltage.nominalVoltage></cim:BaseVoltage><cim:EnergyConsumer rdf:ID="_l"><cim:EnergyConsumer.p>1.5</cim:EnergyConsumer.p></cim:EnergyConsumer></rdf:RDF>`,
      /in which units/,
    ],
  ])("%s", (_name, text, expected) => {
    expect(reasons(importText(text)).join("\n")).toMatch(expected);
  });
});

describe("what is told of an import", () => {
  test("whatever was assumed is named, counted and has its reason", () => {
    const { assumed, approximated } = done(importModel("cim/ieee13-devices.xml"));
    const told = Object.fromEntries(assumed.map((it) => [spell(it.what), it.count]));
    expect(told).toMatchObject({
      "machine drawn as running at the file's output, taken to stop without the grid": 4,
      "fuse link taken as type K": 1,
      "60 Hz": 1,
    });
    expect([...assumed, ...approximated].every((it) => spell(it.why) !== "")).toBe(true);
  });

  test("the drawing reads, and is written as it would be saved", () => {
    const { document } = done(importModel("cases/05-regulator-steps.xml"));
    const again = readDocument(writeDocument(document));
    expect("document" in again && again.warnings).toEqual([]);
  });

  test("ids do not depend on the order of the file", () => {
    const ids = (text: string) => Object.keys(done(importText(text)).document.system.points).sort();
    const node = (id: string, name: string) =>
      `<cim:ConnectivityNode rdf:ID="_${id}"><cim:IdentifiedObject.name>${name}</cim:IdentifiedObject.name></cim:ConnectivityNode>`;
    const terminal = (id: string, of: string, at: string, n: number) =>
      `<cim:Terminal rdf:ID="_${id}"><cim:ACDCTerminal.sequenceNumber>${n}</cim:ACDCTerminal.sequenceNumber><cim:Terminal.ConductingEquipment rdf:resource="#_${of}"/><cim:Terminal.ConnectivityNode rdf:resource="#_${at}"/></cim:Terminal>`;
    const rest = `<cim:Disconnector rdf:ID="_d"><cim:Switch.open>false</cim:Switch.open></cim:Disconnector>${terminal("t1", "d", "a", 1)}${terminal("t2", "d", "b", 2)}`;
    const [one, other] = [node("a", "Elder"), node("b", "elder")];
    const file = (...parts: string[]) => `<rdf:RDF ${RDF} ${CIM}>${parts.join("")}</rdf:RDF>`;
    expect(ids(file(one, other, rest))).toEqual(ids(file(rest, other, one)));
    expect(new Set(ids(file(one, other, rest)).map((it) => it.toLowerCase())).size).toBe(2);
  });
});

/** A model of a source and lines from node to node, as a converter would write it. */
function chain(lines: number, { lengthM = 100, source = true, places = "", system = "" } = {}): string {
  const node = (k: number) =>
    `<cim:ConnectivityNode rdf:ID="_n${k}"><cim:IdentifiedObject.name>N${k}</cim:IdentifiedObject.name></cim:ConnectivityNode>`;
  const terminal = (of: string, at: number, n: number) =>
    `<cim:Terminal rdf:ID="_t${of}${n}"><cim:ACDCTerminal.sequenceNumber>${n}</cim:ACDCTerminal.sequenceNumber><cim:Terminal.ConductingEquipment rdf:resource="#_${of}"/><cim:Terminal.ConnectivityNode rdf:resource="#_n${at}"/></cim:Terminal>`;
  const located = places === "" ? "" : `<cim:PowerSystemResource.Location rdf:resource="#_loc"/>`;
  return [
    `<rdf:RDF ${RDF} ${CIM}>`,
    ...(source
      ? [
          `<cim:EnergySource rdf:ID="_s"><cim:EnergySource.voltageMagnitude>12470</cim:EnergySource.voltageMagnitude></cim:EnergySource>${terminal("s", 0, 1)}`,
        ]
      : []),
    ...Array.from({ length: lines + 1 }, (_, k) => node(k)),
    ...Array.from(
      { length: lines },
      (_, k) =>
        `<cim:ACLineSegment rdf:ID="_l${k}"><cim:Conductor.length>${lengthM}</cim:Conductor.length><cim:ACLineSegment.r>0.1</cim:ACLineSegment.r><cim:ACLineSegment.x>0.1</cim:ACLineSegment.x>${k === 0 ? located : ""}</cim:ACLineSegment>${terminal(`l${k}`, k, 1)}${terminal(`l${k}`, k + 1, 2)}`,
    ),
    places,
    system,
    "</rdf:RDF>",
  ].join("");
}

const told = (entries: readonly { what: Parameters<typeof spell>[0]; count: number }[]) =>
  Object.fromEntries(entries.map((it) => [spell(it.what), it.count]));

describe("what is odd in a model becomes a drawing with what is odd named", () => {
  test("no positions", () => {
    const { document, assumed } = done(importText(chain(3)));
    expect(told(assumed)).toMatchObject({ "no places": 1 });
    expect(Object.values(document.system.points).every((it) => it["x"] === undefined)).toBe(true);
  });

  test("positions in a plane of another system, whose unit nobody told", () => {
    const at = (n: number, x: number) =>
      `<cim:PositionPoint rdf:ID="_p${n}"><cim:PositionPoint.Location rdf:resource="#_loc"/><cim:PositionPoint.sequenceNumber>${n}</cim:PositionPoint.sequenceNumber><cim:PositionPoint.xPosition>${x}</cim:PositionPoint.xPosition><cim:PositionPoint.yPosition>5000000</cim:PositionPoint.yPosition></cim:PositionPoint>`;
    const places = `<cim:Location rdf:ID="_loc"><cim:Location.CoordinateSystem rdf:resource="#_crs"/></cim:Location>${at(1, 400000)}${at(2, 400328.08)}`;
    const system = `<cim:CoordinateSystem rdf:ID="_crs"><cim:CoordinateSystem.crsUrn>EPSG:2232</cim:CoordinateSystem.crsUrn></cim:CoordinateSystem>`;
    const { document, approximated } = done(importText(chain(1, { places, system })));
    expect(told(approximated)).toMatchObject({ "places taken as a plane: EPSG:2232": 1 });
    const [a, b] = Object.values(document.system.points);
    // Feet by what the line's 100 m say.
    expect(Math.abs(Number(a!["x"]) - Number(b!["x"]))).toBeCloseTo(100, 0);
  });

  test("a profile in the header that nobody knows is named", () => {
    const { warnings } = done(
      importText(
        chain(1)
          .replace(CIM, `${CIM}>${header("http://example.org/profile/9")}<!-- -->`)
          .replace("<!-- -->>", ""),
      ),
    );
    expect(told(warnings)).toMatchObject({ "a profile that is not known: http://example.org/profile/9": 1 });
  });

  test("islands are drawn, counted, and nobody knows what feeds them", () => {
    const { document, warnings } = done(importText(chain(2, { source: false })));
    expect(told(warnings)).toMatchObject({ "no source in the file": 1, "no source leads there": 3 });
    const { conductors } = assess(document) as { conductors: Record<string, { state: string }> };
    expect(conductors["N1/A"]!.state).toBe("unknown");
  });

  test("thousands of lines without length are leads, each with its volts", () => {
    const { document, counts, approximated } = done(importText(chain(3000, { lengthM: 0 })));
    expect(told(approximated)).toMatchObject({ "line drawn as a lead": 3000 });
    expect(counts.elements).toMatchObject({ lead: 3000, source: 1 });
    const { conductors } = assess(document) as { conductors: Record<string, { volts: number }> };
    expect(conductors["N3000/A"]!.volts).toBeCloseTo(12470 / Math.sqrt(3), 0);
  });

  test("an island of the year of a profile that nobody knows is read by what its classes say", () => {
    const unknown = chain(1).replace(
      "http://iec.ch/TC57/CIM100#",
      "http://iec.ch/TC57/2031/CIM-schema-cim21#",
    );
    const outcome = importText(unknown);
    expect(done(outcome).warnings.map((it) => spell(it.what))).toContain(
      "a newer version of the standard: http://iec.ch/TC57/2031/CIM-schema-cim21#",
    );
  });
});

/** The example is this project's own; its figures are those that its makers found by hand-written drawing (shared/import). */
describe("a map in GeoJSON", () => {
  test("the example becomes 20 points and 26 elements with the states and volts of the same drawing by hand", () => {
    const { document, counts, leftOut } = done(importMapFile("geojson/example.geojson"));
    expect(counts.points).toBe(20);
    expect(Object.keys(document.system.elements)).toHaveLength(26);
    expect(leftOut).toHaveLength(1);
    const { conductors } = assess(document) as {
      conductors: Record<string, { state: string; volts: number }>;
    };
    expect(conductors["P3/A"]!.state).toBe("energized");
    expect(conductors["P3/A"]!.volts).toBeCloseTo(7212, 0);
    expect(conductors["T1-s/1"]!.volts).toBeCloseTo(119.8, 1);
    expect(conductors["P4-C3/A"]!.state).toBe("isolated");
    expect(conductors["T2-s/1"]!.state).toBe("isolated");
    expect(conductors["H3/A"]!.volts).toBeCloseTo(116.6, 1);
    expect(document.system.elements["S1" as never]!["lengthM"]).toBeCloseTo(315.3, 1);
  });

  const map = (...features: object[]) => JSON.stringify({ type: "FeatureCollection", features });
  const point = (id: string, lon: number, lat: number) => ({
    type: "Feature",
    id,
    geometry: { type: "Point", coordinates: [lon, lat] },
    properties: { class: "pole" },
  });
  const span = (id: string, from: number[], to: number[], properties: object = {}) => ({
    type: "Feature",
    id,
    geometry: { type: "LineString", coordinates: [from, to] },
    properties: { class: "span", phases: "A", ...properties },
  });
  const device = (id: string, properties: object) => ({
    type: "Feature",
    id,
    geometry: null,
    properties: { class: "device", ...properties },
  });

  test.each(Object.keys(DEVICES))("a device of kind %s comes in, or it is told why it does not", (kind) => {
    const text = map(
      point("a", 0, 0),
      point("b", 0, 0.001),
      span("s", [0, 0], [0, 0.001]),
      device("d", { device: kind, on: "a", toward: "s", phases: "A" }),
    );
    const read = importMap(text);
    if ("errors" in read) expect(reasons(read).join("\n")).toMatch(/\bd\b/);
    else expect(Object.values(read.document.system.elements).map((it) => it.kind)).toContain(kind);
  });

  test.each([
    ["plane coordinates", map(point("a", 500000, 4_649_776)), /export in WGS 84/],
    ["an end in the air", map(point("a", 0, 0), span("s", [0, 0], [0, 0.001])), /lies 111.* m from a/],
    ["one id twice", map(point("a", 0, 0), point("a", 0, 1)), /two features have this id/],
    ["no id", map({ type: "Feature", geometry: null, properties: { class: "pole" } }), /has no id/],
    [
      "a device on nothing",
      map(point("a", 0, 0), device("d", { device: "load", on: "b" })),
      /no point of the file/,
    ],
    [
      "a switch toward nothing",
      map(point("a", 0, 0), device("d", { device: "cutout", on: "a", phases: "A" })),
      /toward/,
    ],
    [
      "a phase that is not there",
      map(
        point("a", 0, 0),
        point("b", 0, 0.001),
        span("s", [0, 0], [0, 0.001]),
        device("d", { device: "cutout", on: "a", toward: "s", phases: "B" }),
      ),
      /phase B is not on s/,
    ],
    ["no collection", JSON.stringify({ type: "Feature" }), /no map and no model/],
  ])("%s is refused in words", (_name, text, expected) => {
    expect(reasons(importMap(text)).join("\n")).toMatch(expected);
  });
});

describe("what another program may write", () => {
  const devices = readFileSync("shared/import/cim/ieee13-devices.xml", "utf8");

  test("a line of less than no length is an error that says which", () => {
    const text = devices.replace(/(<cim:Conductor.length>)[^<]*/, "$1-50");
    expect(reasons(importText(text)).join()).toMatch(/ACLineSegment "650632".*length is -50 m/);
  });

  test.each(["Linear", "Symmetrical", "Asymmetrical", "Tabular"])(
    "a phase shifter (%s) is named, since its transformer is drawn without it",
    (kind) => {
      const taps = `<cim:PhaseTapChanger${kind} rdf:ID="_ptc"><cim:IdentifiedObject.name>PST 1</cim:IdentifiedObject.name></cim:PhaseTapChanger${kind}></rdf:RDF>`;
      const { approximated } = done(importText(devices.replace("</rdf:RDF>", taps)));
      expect(approximated.find(({ what }) => what.key === "importing.phaseShifter")?.names).toEqual([
        "PST 1",
      ]);
      expect(done(importText(devices)).approximated.map(({ what }) => what.key)).not.toContain(
        "importing.phaseShifter",
      );
    },
  );

  test("a switch that swaps phases and is fed from its second terminal is told from its source side", () => {
    const object = (kind: string, id: string, inner: string) =>
      `<cim:${kind} rdf:ID="_${id}"><cim:IdentifiedObject.name>${id}</cim:IdentifiedObject.name>${inner}</cim:${kind}>`;
    const to = (key: string, id: string) => `<cim:${key} rdf:resource="#_${id}"/>`;
    const terminal = (id: string, of: string, node: string, nth: number) =>
      object(
        "Terminal",
        id,
        `${to("Terminal.ConductingEquipment", of)}${to("Terminal.ConnectivityNode", node)}<cim:ACDCTerminal.sequenceNumber>${nth}</cim:ACDCTerminal.sequenceNumber>`,
      );
    const phase = (one: string, other: string, closed: boolean) =>
      object(
        "SwitchPhase",
        `sw${one}`,
        `${to("SwitchPhase.Switch", "sw")}<cim:SwitchPhase.phaseSide1 rdf:resource="http://iec.ch/TC57/CIM100#SinglePhaseKind.${one}"/><cim:SwitchPhase.phaseSide2 rdf:resource="http://iec.ch/TC57/CIM100#SinglePhaseKind.${other}"/><cim:SwitchPhase.closed>${closed}</cim:SwitchPhase.closed>`,
      );
    const text = `<rdf:RDF ${RDF} ${CIM}>${[
      object("ConnectivityNode", "a", ""),
      object("ConnectivityNode", "b", ""),
      object(
        "EnergySource",
        "src",
        "<cim:EnergySource.voltageMagnitude>12470</cim:EnergySource.voltageMagnitude>",
      ),
      terminal("t1", "src", "b", 1),
      object("Disconnector", "sw", "<cim:Switch.open>false</cim:Switch.open>"),
      terminal("t2", "sw", "a", 1),
      terminal("t3", "sw", "b", 2),
      phase("A", "B", false),
      phase("B", "C", true),
      phase("C", "A", true),
    ].join("")}</rdf:RDF>`;
    // A at its first terminal, which is the far one, is B at the source: open on B there, which goes on as A.
    expect(Object.values(done(importText(text)).document.system.elements)).toContainEqual(
      expect.objectContaining({ from: "b", to: "a", phases: "ABC", toPhases: "CAB", open: "B" }),
    );
  });
});
