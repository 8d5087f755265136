/** A regular drawing of any size: a main line with sidelines of transformers and customers, for benchmarks. */

type Saved = Record<string, unknown>;

/**
 * About `devices` elements: a three-phase main, single-phase sidelines behind cutouts, each with transformers, meters and
 * loads; a tie at the far end; one sideline opened, tagged and with the work point on it.
 */
export function sidelineSystem(devices: number) {
  const points: Record<string, Saved> = { sub: { kind: "station", x: 0, y: 0, earthOhms: 1 } };
  const elements: Record<string, Saved> = {
    s1: { kind: "source", at: "sub", phases: "ABC", kvLL: 12.47, z1Ohms: [0.2, 1], z0Ohms: [0.4, 2.2] },
  };
  let count = 1;
  let placed = 1;
  const point = (id: string, earthOhms?: number) => {
    points[id] = {
      kind: "pole",
      x: 100 * (placed % 50),
      y: 100 * Math.floor(placed++ / 50),
      ...(earthOhms === undefined ? {} : { earthOhms }),
    };
    return id;
  };
  const add = (id: string, record: Saved) => {
    elements[id] = record;
    count++;
  };
  let main = "sub";
  let sideline = 0;
  while (count < devices) {
    sideline++;
    const pole = point(`m${sideline}`, 25);
    add(`ms${sideline}`, { kind: "span", from: main, to: pole, phases: "ABC", lengthM: 150 });
    main = pole;
    const phase = "ABC"[sideline % 3]!;
    let at = point(`c${sideline}`);
    add(`q${sideline}`, {
      kind: "cutout",
      from: pole,
      to: at,
      phases: phase,
      fuse: { type: "K", amps: 25 },
      ...(sideline === 2 ? { open: phase, tagged: true } : {}),
    });
    for (let tap = 1; tap <= 3 && count < devices; tap++) {
      const id = `${sideline}_${tap}`;
      const pole2 = point(`p${id}`, 25);
      add(`sp${id}`, { kind: "span", from: at, to: pole2, phases: phase, lengthM: 60 });
      at = pole2;
      const bushing = point(`b${id}`);
      add(`k${id}`, {
        kind: "cutout",
        from: pole2,
        to: bushing,
        phases: phase,
        fuse: { type: "K", amps: 10 },
      });
      const low = point(`l${id}`);
      add(`t${id}`, {
        kind: "transformer",
        from: bushing,
        to: low,
        phases: phase,
        connection: "single",
        kva: 25,
        primaryKv: 7.2,
        secondaryV: 240,
      });
      for (const house of ["a", "b"]) {
        const panel = point(`h${id}${house}`);
        add(`mt${id}${house}`, { kind: "meter", from: low, to: panel, phases: "12" });
        add(`ld${id}${house}`, {
          kind: "load",
          at: panel,
          phases: "12",
          connection: "delta",
          kw: 3,
          kvar: 1,
          customers: 1,
        });
      }
    }
  }
  point("sub2", 1);
  add("s2", { kind: "source", at: "sub2", phases: "ABC", kvLL: 12.47 });
  add("tie", {
    kind: "disconnect",
    from: "sub2",
    to: main,
    phases: "ABC",
    gang: true,
    open: "ABC",
    normallyOpen: true,
  });
  return {
    format: "stillhot" as const,
    formatVersion: 1 as const,
    title: `${devices} devices`,
    system: { frequencyHz: 60 as const, points, elements },
    job: {
      task: "",
      workPoints: { w1: { at: "c2", conductors: "C" } },
      tools: [],
      permit: "none",
      steps: [],
    },
  };
}
