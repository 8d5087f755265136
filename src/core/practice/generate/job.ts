import type { JsonObject } from "../../terms";
import type { Sketch } from "./sketch";

type WorkSite = {
  readonly at: string;
  readonly conductors: string;
  readonly label: string;
};

interface Candidate {
  readonly task: string;
  readonly places: readonly WorkSite[];
}

const TOOLS = [
  "clamp-stick",
  "extending-stick",
  "load-break-tool",
  "voltage-detector",
  "ground-set",
  "cover",
  "lead-cutters",
];

/** A job on what was drawn: one of all the everyday ones that it gives a place for. */
export function jobOn(sketch: Sketch): JsonObject {
  const { task, places } = sketch.chance.oneOf(candidates(sketch));
  return {
    task,
    workPoints: Object.fromEntries(places.map((it, index) => [`w${index + 1}`, it])),
    tools: TOOLS,
    permit: "none",
  };
}

function candidates(sketch: Sketch): Candidate[] {
  const { words, sideline, head } = sketch;
  const hung = [...sketch.transformers, ...sketch.banks];
  return [
    ...hung.map(({ name, bushing, phases }) => ({
      task: words.leadTask(name),
      places: [{ at: bushing, conductors: phases, label: words.lead(name) }],
    })),
    ...hung
      .filter((it) => it.hasArrester)
      .map(({ name, bushing, phases }) => ({
        task: words.arresterTask(name),
        places: [{ at: bushing, conductors: phases, label: words.lead(name) }],
      })),
    ...hung.map(({ name, secondary, letters }) => ({
      task: words.secondaryTask(name),
      places: [{ at: secondary, conductors: letters, label: words.secondary(name) }],
    })),
    // Jobs on the line come as often as those at a transformer.
    ...sideline.flatMap(({ pole, point, phases }) =>
      [1, 2].map(() => ({
        task: words.insulatorTask(pole),
        places: [{ at: point, conductors: phases, label: words.line(pole) }],
      })),
    ),
    ...(head === undefined || sideline.length === 0
      ? []
      : [
          {
            task: words.headTask(head.pole),
            places: [{ at: head.point, conductors: head.phases, label: words.line(head.pole) }],
          },
        ]),
    ...sketch.cables.map(([one, other]) => ({
      task: words.cableTask(one.pad, other.pad),
      places: [one, other].map(({ point, pad, phase }) => ({
        at: point,
        conductors: phase,
        label: words.cableEnd(pad),
      })),
    })),
  ];
}
