import { type JsonObject, refuse, say } from "../../terms";
import { addElement } from "./addElement";
import { type Command, elementOf } from "./change";
import { removeThings } from "./removeThings";

/** Puts a temporary protective ground set on a point: on all of its phases, unless the keys say which. */
export const addGround = (at: string, keys: JsonObject = {}): Command => addElement("ground", { at }, keys);

/** Takes a ground set off. */
export const removeGround =
  (id: string): Command =>
  (before) =>
    elementOf(before, id)?.kind === "ground"
      ? removeThings({ elements: [id] })(before)
      : refuse(say("edit.noGround", { id }));
