import type { JsonObject } from "../../terms";
import { addElement } from "./addElement";
import type { Edit } from "./change";

/** Puts a temporary protective ground set on a point: on all of its phases, unless the keys say which. */
export const addGround = (at: string, keys: JsonObject = {}): Edit => addElement("ground", { at }, keys);
