/** A general-purpose circuit simulator, in WebAssembly, for one frequency at a time. */
import { Simulation } from "eecircuit-engine";

let started: Promise<Simulation> | undefined;

async function simulator(): Promise<Simulation> {
  started ??= (async () => {
    const fresh = new Simulation();
    await fresh.start();
    return fresh;
  })();
  return started;
}

/** Runs a netlist's parts at one frequency. @returns volts to earth by node name, in lower case [V] */
export async function simulate(
  lines: readonly string[],
  hertz: number,
): Promise<ReadonlyMap<string, readonly [re: number, im: number]>> {
  const engine = await simulator();
  engine.setNetList(
    ["* check", ...lines, ".options noopac", `.ac lin 1 ${hertz} ${hertz}`, ".end", ""].join("\n"),
  );
  const result = await engine.runSim();
  if (result.dataType !== "complex") throw new Error("the simulator gave no phasors");
  return new Map(
    result.data.map(({ name, values }) => [
      name.replace(/^v\((.*)\)$/, "$1").toLowerCase(),
      [values[0]!.real, values[0]!.img] as const,
    ]),
  );
}
