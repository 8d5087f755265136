import { fingerprintOf, type StillhotDocument, writeDocument } from "../core";
import { strToU8, zipSync, type Zippable } from "fflate";
import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";

/** The versions of SCORM that a package is made for. */
export const LESSON_VERSIONS = ["1.2", "2004"] as const;

/** One of them. */
export type PackagedVersion = (typeof LESSON_VERSIONS)[number];

/** Of the built app, what keeps it on a device or takes files from other apps: a learning system does that itself. */
const LEFT_OUT = /^(sw\.js|workbox-.*|manifest\.webmanifest|share-target\.js)$/;

/** A moment for every file of the zip, so that the same scenario makes the same bytes: the first that the format has. */
const MTIME = new Date(1980, 0, 2);

/**
 * A scenario as a package for learning systems: the app, the scenario, and the manifest that the standard asks for.
 *
 * @param app folder of the built app
 * @see SCORM 1.2 and SCORM 2004 4th edition, content aggregation model
 */
export function lessonPackage(scenario: StillhotDocument, version: PackagedVersion, app: string): Uint8Array {
  const files: Record<string, Uint8Array> = {};
  for (const entry of readdirSync(app, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name).slice(app.length).split(sep).filter(Boolean).join("/");
    if (entry.isFile() && !LEFT_OUT.test(path))
      files[path] = readFileSync(join(entry.parentPath, entry.name));
  }
  const page = Buffer.from(files["index.html"]!).toString("utf8");
  delete files["index.html"];
  files["lesson.html"] = strToU8(
    page
      .replace("<html ", `<html data-lesson="${version}" `)
      .replace(/<link rel="manifest"[^>]*>/, "")
      .replace("<script ", '<script src="./lesson.js"></script><script '),
  );
  files["lesson.js"] = strToU8('location.hash ||= "scenario";\n');
  files["lesson.stillhot.json"] = strToU8(writeDocument(scenario));
  const paths = Object.keys(files).sort();
  const zipped: Zippable = { "imsmanifest.xml": strToU8(manifest(scenario, version, paths)) };
  for (const path of paths) zipped[path] = files[path]!;
  return zipSync(zipped, { mtime: MTIME });
}

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (it) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[it]!);

const SPACES: Readonly<Record<PackagedVersion, { schema: string; names: string; type: string }>> = {
  "1.2": {
    schema: "1.2",
    names:
      'xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2" xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2"',
    type: "adlcp:scormtype",
  },
  "2004": {
    schema: "2004 4th Edition",
    names:
      'xmlns="http://www.imsglobal.org/xsd/imscp_v1p1" xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_v1p3" xmlns:imsss="http://www.imsglobal.org/xsd/imsss"',
    type: "adlcp:scormType",
  },
};

function manifest(scenario: StillhotDocument, version: PackagedVersion, paths: readonly string[]): string {
  const { schema, names, type } = SPACES[version];
  const title = escaped(scenario.title === "" ? "Stillhot" : scenario.title);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<manifest identifier="stillhot-${fingerprintOf(scenario).slice(0, 16)}" version="1.0" ${names}>`,
    `  <metadata><schema>ADL SCORM</schema><schemaversion>${schema}</schemaversion></metadata>`,
    '  <organizations default="stillhot">',
    `    <organization identifier="stillhot"><title>${title}</title>`,
    `      <item identifier="lesson" identifierref="page"><title>${title}</title></item>`,
    "    </organization>",
    "  </organizations>",
    "  <resources>",
    `    <resource identifier="page" type="webcontent" ${type}="sco" href="lesson.html">`,
    ...paths.map((it) => `      <file href="${escaped(it)}"/>`),
    "    </resource>",
    "  </resources>",
    "</manifest>",
    "",
  ].join("\n");
}
