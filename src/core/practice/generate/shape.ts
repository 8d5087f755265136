import { deviceOf } from "../../devices";
import { complete, type System } from "../../document";

/** What a drawing is made of, whatever it is called: two drawings with the same shape would be one exercise. */
export const shapeOf = ({ elements }: System): string =>
  Object.values(elements)
    .map((saved) => {
      const it = complete(saved) as unknown as Readonly<Record<string, unknown>>;
      const { kind } = saved;
      const phases = typeof it["phases"] === "string" ? it["phases"].length : 0;
      const more = ["connection", "gang", "relation", "interface", "secondary", "construction"].map((key) =>
        it[key] === undefined ? "" : String(it[key]),
      );
      return [kind, deviceOf(kind).ends.length, phases, ...more].join(" ");
    })
    .sort()
    .join("\n");
