import type { MapDocument } from '#core/map/map-document.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { runLine } from '../../../board/run-line.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { drawWords } from '../../../language/draw.ts';
import { nameOf } from '../../../language/name-of.ts';
import { Select } from '../../../parts/index.ts';
import { useDraw } from '../draw-context.ts';
import { FigureField } from '../figure-field.tsx';

/** A run that was chosen, or null where it was deleted since. */
export const runStillThere = (map: MapDocument, segmentId: SegmentId | null): SegmentId | null =>
  segmentId !== null && map.segments.has(segmentId) ? segmentId : null;

/** One of the map's runs, by name. */
export function RunSelect({
  value,
  onChange,
}: {
  readonly value: SegmentId | null;
  readonly onChange: (segmentId: SegmentId | null) => void;
}) {
  const { map } = useDraw();
  const options = [...map.segments.values()]
    .map(({ id, fromNodeId, toNodeId }) => ({
      value: id as string,
      label: `${nameOf(map, id)}: ${nameOf(map, fromNodeId)} – ${nameOf(map, toNodeId)}`,
    }))
    .sort((a, b) => compareText(a.label, b.label) || compareText(a.value, b.value));
  return (
    <Select
      label={figureWords.run}
      value={value ?? ''}
      options={[{ value: '', label: figureWords.chooseRun }, ...options]}
      onChange={(id) => onChange(id === '' ? null : (id as SegmentId))}
    />
  );
}

/** A station of a run as a figure from its first end. */
export function StationField({
  segmentId,
  value,
  onChange,
  label,
}: {
  readonly segmentId: SegmentId | null;
  readonly value: number;
  readonly onChange: (stationMm: number) => void;
  readonly label?: string;
}) {
  const { map } = useDraw();
  const segment = segmentId ? map.segments.get(segmentId) : undefined;
  const lengthMm = segment ? (runLine(map, segment)?.lengthMm ?? 0) : 0;
  const from = segment ? figureWords.station(nameOf(map, segment.fromNodeId)) : figureWords.stationOpen;
  return (
    <FigureField
      label={label ?? from}
      value={value}
      unit={drawWords.units.mm}
      min={0}
      max={segment ? lengthMm : 50_000}
      onChange={(mm) => onChange(mm ?? 0)}
    />
  );
}
