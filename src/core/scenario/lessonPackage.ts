import { strFromU8, strToU8, zipSync, type Zippable } from "fflate";
import { type StillhotDocument, writeDocument } from "../document";
import { escapeXml } from "../drawing";
import { fingerprintOf } from "./attempt";

/** The versions of SCORM that a package is made for. */
export const LESSON_VERSIONS = ["1.2", "2004"] as const;

/** One of them. */
export type PackagedVersion = (typeof LESSON_VERSIONS)[number];

/** Of the built app, what keeps it on a device, takes files from other apps or lists its files: a learning system does that itself. */
const LEFT_OUT = /^(sw\.js|workbox-.*|manifest\.webmanifest|share-target\.js|files\.json)$/;

/** Whether a file of the built app belongs into a lesson package. */
export const isOfLesson = (path: string): boolean => !LEFT_OUT.test(path);

/** A moment for every file of the zip, so that the same scenario makes the same bytes: the first that the format has. */
const MTIME = "1980-01-02T00:00:00";

/**
 * A scenario as a package for learning systems: the app, the scenario, and the manifest that the standard asks for.
 *
 * @param app files of the built app, by their paths within it
 * @see SCORM 1.2 and SCORM 2004 4th edition, content aggregation model
 */
export function lessonPackage(
  scenario: StillhotDocument,
  version: PackagedVersion,
  app: ReadonlyMap<string, Uint8Array>,
): Uint8Array {
  const { "index.html": first, ...files } = Object.fromEntries([...app].filter(([path]) => isOfLesson(path)));
  const page = strFromU8(first!);
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
  const title = escapeXml(scenario.title === "" ? "Stillhot" : scenario.title);
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
    ...paths.map((it) => `      <file href="${escapeXml(it)}"/>`),
    "    </resource>",
    "  </resources>",
    "</manifest>",
    "",
  ].join("\n");
}
