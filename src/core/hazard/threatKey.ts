import type { Threat } from "./types";

/** The same for the same way to go live on the same conductor, whatever its figures. */
export const threatKey = ({ conductor, upsets }: Pick<Threat, "conductor" | "upsets">): string =>
  `${conductor} ${keyOfUpsets(upsets)}`;

/** What a set of upsets is known by. */
export const keyOfUpsets = (upsets: Threat["upsets"]): string =>
  upsets.map((it) => `${it.kind} ${it.element} ${it.phase ?? ""}`).join();
