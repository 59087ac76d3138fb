import { loomFigures } from '#core/chafe/loom-figures.ts';
import type { Segment } from '#core/map/records.ts';
import { diameterSpreadMm } from '#core/wire/bundle.ts';
import { loomWords } from '../../../language/loom-figures.ts';
import { useDraw } from '../draw-context.ts';

/** The loom of a run as the model takes it, and the span a place lies in: each figure with its bounds. */
export function LoomSaid({ segment, stationMm }: { readonly segment: Segment; readonly stationMm: number }) {
  const { map, lengths } = useDraw();
  const figures = loomFigures(map, segment);
  if (!figures) return null;
  const { bundle, assumedWires, diameterGiven, spans } = figures;
  const { tight, loose } = diameterSpreadMm(bundle);
  const span = spans.find(({ toMm }) => stationMm <= toMm) ?? spans.at(-1);
  return (
    <section className="loom-said" aria-label={loomWords.label}>
      <p>
        {loomWords.thick(bundle.diameterMm, diameterGiven ? null : [tight, loose], lengths)};{' '}
        {loomWords.heavy(bundle.kgPerMetre, assumedWires)}.
      </p>
      {span ? (
        <p>
          {loomWords.span(span.held, lengths)}
          {span.held.spanMm === undefined
            ? '.'
            : `: ${loomWords.swings(span.hz)}, ${loomWords.sags(span.sagMm, lengths)}.`}
        </p>
      ) : null}
      <p className="field-hint">{loomWords.hint}</p>
    </section>
  );
}
