import { learn } from "../../core";

/**
 * Loads what the first picture does without, and every sentence with it: the app starts with those of the first picture.
 * Whatever is imported when it is needed comes by this, so that nothing speaks before its sentences are there.
 */
export async function later<Module>(load: () => Promise<Module>): Promise<Module> {
  const [module, { english }] = await Promise.all([load(), import("./sentences")]);
  learn(english);
  return module;
}
