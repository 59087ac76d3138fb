import { useMemo } from 'react';
import type { MapDocument } from '#core/map/map-document.ts';
import type { RequestOutput } from '#electron/contract/contract.ts';
import type { LitMark } from '../../board/lit.ts';
import { canvasMeasure } from '../../drawing-export/canvas-measure.ts';
import { MapDrawing, pageType } from '../../drawing-export/map-drawing.tsx';
import { mapSvg } from '../../drawing-export/map-svg.ts';
import { modelWords } from '../../language/model.ts';
import { useMachineSettings } from '../../session/machine-settings.ts';
import { boardColours } from '../../theme/tokens.ts';
import { useTheme } from '../../theme/use-theme.ts';

/** About as wide as it is shown, so that names are as large as others on the page. */
const longSidePx = 720;

/** The map with a ring at each proved cause and a notch at other damage. */
export function ChafingPicture({
  map,
  places,
}: {
  readonly map: MapDocument;
  readonly places: RequestOutput<'map.past'>['places'];
}) {
  const theme = useTheme();
  const lengths = useMachineSettings((settings) => settings.lengths);
  const svg = useMemo(() => {
    const marks = places.map(({ segmentId, fromMm, toMm, causes }): LitMark => {
      return causes > 0
        ? { kind: 'found', segmentId, atMm: (fromMm + toMm) / 2 }
        : { kind: 'damaged-not-ours', segmentId, fromMm, toMm };
    });
    const lit = {
      stretches: new Map(),
      marks,
      panelsOff: new Set<never>(),
      circuitSegments: new Set(places.map(({ segmentId }) => segmentId)),
      pointed: [],
    };
    return mapSvg(map, boardColours[theme], {
      lit,
      lengths,
      longSidePx,
      titled: false,
      fontFamily: pageType,
      measure: canvasMeasure(pageType),
    });
  }, [map, places, theme, lengths]);
  return (
    <figure className="chafing-figure">
      <MapDrawing svg={svg} label={modelWords.picture} className="chafing-picture" />
      <figcaption className="quiet">{modelWords.pictureKey}</figcaption>
    </figure>
  );
}
