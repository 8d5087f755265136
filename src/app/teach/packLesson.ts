import { isOfLesson, lessonPackage, type PackagedVersion, type StillhotDocument } from "../../core";
import { download, fileNameOf } from "../share/files";

/** What the built app says of its own files. */
const FILES = "files.json";

/**
 * Packs the app itself and a scenario for learning systems, and hands the zip over. The files come from where the app came
 * from, or from what this device keeps of it.
 *
 * @returns the name of the zip
 */
export async function packLesson(scenario: StillhotDocument, version: PackagedVersion): Promise<string> {
  const fetched = async (path: string) => {
    const answer = await fetch(new URL(path, document.baseURI));
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
    return answer;
  };
  const paths = ((await (await fetched(FILES)).json()) as string[]).filter(isOfLesson);
  const files = await Promise.all(
    paths.map(async (path) => [path, new Uint8Array(await (await fetched(path)).arrayBuffer())] as const),
  );
  const zip = lessonPackage(scenario, version, new Map(files)) as Uint8Array<ArrayBuffer>;
  return download(fileNameOf(scenario, `scorm-${version}.zip`), zip, "application/zip");
}
