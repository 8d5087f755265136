/** Median time of a call after as many to warm up, in milliseconds. Only ever used as a ratio of two in the same run. */
export function medianMilliseconds(run: () => unknown, rounds = 15): number {
  for (let round = 0; round < rounds; round++) run();
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[rounds >> 1]!;
}

/** Prints one figure of a benchmark beside what is wanted of it. */
export const report = (what: string, figure: number, wanted: string): void =>
  console.log(`  ${what}: ${figure.toPrecision(3)} (wanted: ${wanted})`);
