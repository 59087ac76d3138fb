import { useMemo, useState } from 'react';
import type { MapDocument } from '#core/map/map-document.ts';
import { ok, type Result } from '#core/quantity/result.ts';
import { canvasMeasure } from '../../drawing-export/canvas-measure.ts';
import { mapPng, mostSidePx } from '../../drawing-export/map-png.ts';
import { mapSvg, mapSvgSize } from '../../drawing-export/map-svg.ts';
import { handoverWords } from '../../language/handover.ts';
import type { LengthSystem } from '../../language/say-length.ts';
import { Button, Choice, NumberField } from '../../parts/index.ts';
import { boardColours } from '../../theme/tokens.ts';
import { pictureSize } from './drawing-size.ts';
import { FileParts, Outcome } from './hand-out-files.tsx';
import { type MadeFile, textFile, useHandOut } from './use-hand-out.ts';

const text = handoverWords.handOut;
const kinds = ['svg', 'png'] as const;
const sizes = ['full', 'chosen'] as const;
const leastWidthPx = 400;
/** What every machine has: the type of this page is not at hand where the drawing is opened. */
const fontFamily = 'sans-serif';

/** Hands a map out: as a document, as a bundle with its pictures, or drawn. */
export function HandOutMap({
  map,
  lengths,
  flush,
}: {
  readonly map: MapDocument;
  readonly lengths: LengthSystem;
  /** Puts on disk what still waits, for the host hands out what is there. */
  readonly flush: () => Promise<void>;
}) {
  const { state, handOut, stop } = useHandOut();
  const busy = state.at === 'making';
  return (
    <div className="handover">
      <FileParts mapId={map.id} flush={flush} busy={busy} onMake={(kind, make) => void handOut(kind, make)} />
      <DrawingPart map={map} lengths={lengths} busy={busy} onMake={(make) => void handOut('drawing', make)} />
      <Outcome state={state} onStop={stop} />
    </div>
  );
}

/** The drawing as SVG, or as a picture of a size. */
function DrawingPart({
  map,
  lengths,
  busy,
  onMake,
}: {
  readonly map: MapDocument;
  readonly lengths: LengthSystem;
  readonly busy: boolean;
  readonly onMake: (make: () => Promise<Result<MadeFile>>) => void;
}) {
  const [kind, setKind] = useState<(typeof kinds)[number]>('svg');
  const [size, setSize] = useState<(typeof sizes)[number]>('full');
  const [widthPx, setWidthPx] = useState<number | null>(2_400);
  const sheet = useMemo(() => mapSvgSize(map), [map]);
  const wish = size === 'full' ? { scale: 1 / sheet.pxPerMm } : { widthPx: widthPx ?? leastWidthPx };
  const out = pictureSize(sheet, wish);
  const drawing = async (): Promise<Result<MadeFile>> => {
    // One turn first, so that the progress shows before the drawing takes the page.
    await new Promise((resolve) => setTimeout(resolve, 30));
    const svg = mapSvg(map, boardColours.day, { lengths, fontFamily, measure: canvasMeasure(fontFamily) });
    const stem = map.details.name
      .normalize('NFKD')
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
      .slice(0, 60);
    if (kind === 'svg') return textFile(`${stem}.svg`, svg, 'image/svg+xml');
    const made = await mapPng(svg, out.scale);
    return made.ok ? ok({ fileName: `${stem}.png`, content: made.value }) : made;
  };
  return (
    <section className="handover-part" aria-label={text.drawing}>
      <h2>{text.drawing}</h2>
      <p className="quiet">{text.drawingHint}</p>
      <Choice
        label={text.as}
        value={kind}
        options={kinds.map((value) => ({ value, label: text.kinds[value] }))}
        onChange={setKind}
      />
      {kind === 'png' ? (
        <>
          <Choice
            label={text.size}
            value={size}
            options={sizes.map((value) => ({ value, label: text.sizes[value] }))}
            onChange={setSize}
          />
          {size === 'chosen' ? (
            <NumberField
              label={text.width}
              value={widthPx}
              unit={text.px}
              min={leastWidthPx}
              max={mostSidePx}
              places={0}
              hint={`${leastWidthPx} – ${mostSidePx} ${text.px}`}
              onChange={setWidthPx}
            />
          ) : null}
          <p className="quiet">
            {text.will(out.widthPx, out.heightPx)}
            {out.held ? ` ${text.tooLarge(mostSidePx)}` : ''}
          </p>
        </>
      ) : null}
      <div className="button-row">
        <Button
          disabled={busy || (kind === 'png' && size === 'chosen' && widthPx === null)}
          aria-label={`${text.make}: ${text.drawing}`}
          onClick={() => onMake(drawing)}
        >
          {text.make}
        </Button>
      </div>
    </section>
  );
}
