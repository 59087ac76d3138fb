/**
 * Minutes from one ISO 8601 time to another; negative when the second is earlier.
 * @example
 * minutesBetween('2026-01-05T09:00:00Z', '2026-01-05T10:30:00+01:00') // => 30
 */
export function minutesBetween(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / 60_000;
}
