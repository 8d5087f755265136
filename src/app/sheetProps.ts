import type { StillhotDocument } from "../core";
import type { Offers } from "./find/found";
import type { Autosave } from "./keep/autosave.svelte";
import type { StoredDrawing } from "./keep/store";
import type { Session } from "./session/session.svelte";

/** What the app lays over the place that is shown, one at a time. */
export type SheetId =
  | "find"
  | "menu"
  | "library"
  | "keys"
  | "settings"
  | "kept"
  | "share"
  | "scan"
  | "notation"
  | "help";

/** What a sheet may do with the app; each takes what it needs of it. */
export interface SheetProps {
  readonly session: Session;
  readonly autosave: Autosave;
  /** what can be done in Sketch, while that is the place that is shown */
  readonly offered: () => Offers["sketch"];
  readonly onclose: () => void;
  readonly onshow: (sheet: SheetId) => void;
  readonly ongo: (place: string) => void;
  /** asks for a file, and opens it */
  readonly onfile: () => void;
  readonly onsave: () => void;
  readonly onprint: () => void;
  readonly ondemo: (document: StillhotDocument) => void;
  readonly onmine: (stored: StoredDrawing) => void;
  readonly onopen: (document: StillhotDocument) => void;
  /** shows a drawing that is to be kept. @returns whether it is shown now */
  readonly ontake: (document: StillhotDocument) => Promise<boolean>;
  readonly ontour: () => void;
  readonly onkeys: () => void;
  readonly onlegend: () => void;
}
