import { learn } from "./catalogue";

/**
 * A part of the app could not be fetched. Browsers may never ask again for a module that they once did not get: only the
 * page loaded anew does.
 */
export class PartMissing extends Error {}

/** What the first picture does without. @throws PartMissing */
export async function fetched<Part>(load: () => Promise<Part>): Promise<Part> {
  try {
    return await load();
  } catch (why) {
    throw new PartMissing(why instanceof Error ? why.message : String(why));
  }
}

/**
 * Fetches a part of the app, and every sentence with it: the app starts with those of the first picture. Whatever speaks
 * and is imported when it is needed comes by this, so that nothing speaks before its sentences are there.
 *
 * @throws PartMissing
 */
export async function later<Module>(load: () => Promise<Module>): Promise<Module> {
  const [module, { english }] = await fetched(() => Promise.all([load(), import("./sentences")]));
  learn(english);
  return module;
}
