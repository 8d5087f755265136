import { isUnreadable, readDocument } from "../../src/core/document";
import { type Circuit, circuitOf } from "../../src/core/network";
import type { Plain } from "./plain";

/** One drawing as a second implementation and as the program sees it. */
export interface Case {
  readonly name: string;
  readonly plain: Plain;
  readonly circuit: Circuit;
}

/** Those of some documents that can be read. */
export const casesOf = (documents: readonly (readonly [name: string, document: unknown])[]): Case[] =>
  documents.flatMap(([name, document]) => {
    const read = readDocument(JSON.stringify(document));
    if (isUnreadable(read)) return [];
    const plain = (document as { readonly system: Plain }).system;
    return [{ name, plain, circuit: circuitOf(read.document.system) }];
  });

/** Conductors of a drawing, each with its node. */
export const nodesOf = ({ circuit }: Case) =>
  circuit.conductorIds.map((id, node) => [id as string, node] as const);
