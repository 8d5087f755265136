/** Days from 1 January 1970 to a day of the Gregorian calendar. @see Hinnant, days_from_civil */
function daysOf(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const ofEra = y - era * 400;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  return era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468;
}

/** The day so many days after 1 January 1970. */
function dayAt(days: number): readonly [year: number, month: number, day: number] {
  const z = days + 719_468;
  const era = Math.floor(z / 146_097);
  const ofEra = z - era * 146_097;
  const y = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365,
  );
  const ofYear = ofEra - (365 * y + Math.floor(y / 4) - Math.floor(y / 100));
  const m = Math.floor((5 * ofYear + 2) / 153);
  const month = m < 10 ? m + 3 : m - 9;
  return [y + era * 400 + (month <= 2 ? 1 : 0), month, ofYear - Math.floor((153 * m + 2) / 5) + 1];
}

const TIME = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)(?::(\d\d)(?:\.(\d+))?)?(Z|[+-]\d\d:\d\d)$/;

const two = (value: number): string => String(value).padStart(2, "0");

/**
 * A moment so many seconds after another, in UTC.
 *
 * @param start ISO 8601 with seconds and an offset, `2026-05-04T07:30:00Z`
 * @returns the same form; nothing where `start` is no such moment
 */
export function momentAfter(start: string, seconds: number): string | undefined {
  const found = TIME.exec(start);
  if (found === null) return undefined;
  const [, year, month, day, hour, minute, second = "0", , zone] = found;
  const offset =
    zone === "Z"
      ? 0
      : (zone!.startsWith("-") ? -1 : 1) * (Number(zone!.slice(1, 3)) * 60 + Number(zone!.slice(4)));
  const total =
    daysOf(Number(year), Number(month), Number(day)) * 86_400 +
    Number(hour) * 3600 +
    (Number(minute) - offset) * 60 +
    Number(second) +
    Math.round(seconds);
  const days = Math.floor(total / 86_400);
  const left = total - days * 86_400;
  const [y, m, d] = dayAt(days);
  const clock = [Math.floor(left / 3600), Math.floor((left % 3600) / 60), left % 60].map(two).join(":");
  return `${String(y).padStart(4, "0")}-${two(m)}-${two(d)}T${clock}Z`;
}
