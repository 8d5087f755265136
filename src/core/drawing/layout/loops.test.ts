import { english } from "../../../../tests/support/words";
import { expect, test } from "vitest";
import { madeFrom } from "../../../../tests/support/pictures";
import { endPointsOf, savedElement } from "../../document";
import { assess } from "../../hazard";
import type { ElementId } from "../../terms";
import { boxOf, overlaps, sceneOf } from "..";

test.each(
  [
    [95, "sp17"],
    [197, "sp21"],
  ].flatMap(([seed, id]) => [1, 1.5, 3].map((text) => [seed, id, text] as const)),
)(
  "G7 the cable that closes the loop of pads of the drawn tap %i runs over no pole or pad but its own",
  (seed, id, text) => {
    const document = madeFrom(seed as number)[1]!.document();
    const scene = sceneOf(document, assess(document), { catalogue: english, way: "across", text });
    const ends = endPointsOf(savedElement(document.system.elements, id as string));
    const others = scene.plates.filter(({ plate }) => plate.points.every((it) => !ends.includes(it)));
    const { spots } = scene.routes.get(id as ElementId)!.laid!;
    const crossed = spots
      .slice(1)
      .flatMap(({ x, y }, nth) =>
        others.filter((it) => overlaps(boxOf([spots[nth]!.x, spots[nth]!.y, x, y], 0), it.plate.box)),
      );
    expect(crossed.map(({ plate }) => plate.title)).toEqual([]);
  },
);
