/** The day that it is where the person is, as a file writes it: `2026-03-31`. */
export function today(now: Date = new Date()): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
