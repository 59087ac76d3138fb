import { fail, ok, type Result } from '../quantity/result.ts';
import { stationSlackMm } from '../quantity/tolerance.ts';
import type { MapDocument } from './map-document.ts';
import type { Segment } from './records.ts';
import { segmentLine } from './segment-line.ts';

/**
 * The drawn length of a run that must have one, or `zero-length`.
 * @example
 * drawnLengthMm(sample.map, sample.segment).value // => 500
 */
export function drawnLengthMm(map: MapDocument, segment: Segment): Result<number> {
  const line = segmentLine(map, segment);
  return line ? ok(line.lengthMm) : fail({ code: 'zero-length', thing: segment.id });
}

/**
 * A station brought onto its run: one within rounding of an end becomes that end, one further off is
 * refused (`beyond-end`).
 * @example
 * stationOnRun(sample.map, sample.segment, 500.4, 'stationMm').value // => 500
 */
export function stationOnRun(
  map: MapDocument,
  segment: Segment,
  stationMm: number,
  field: string,
): Result<number> {
  const length = drawnLengthMm(map, segment);
  if (!length.ok) return length;
  if (!(stationMm >= -stationSlackMm && stationMm <= length.value + stationSlackMm)) {
    return fail({
      code: 'beyond-end',
      thing: segment.id,
      field,
      stationMm,
      lengthMm: length.value,
    });
  }
  return ok(Math.min(length.value, Math.max(0, stationMm)));
}
