import { useEffect, useMemo, useState } from 'react';
import type { MapDocument } from '#core/map/map-document.ts';
import type { RequestOutput } from '#electron/contract/contract.ts';
import type { LitMark } from '../../board/lit.ts';
import { mapSvg } from '../../drawing-export/map-svg.ts';
import { modelWords } from '../../language/model.ts';
import { useMachineSettings } from '../../session/machine-settings.ts';
import { boardColours } from '../../theme/tokens.ts';
import { useTheme } from '../../theme/use-theme.ts';

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
    return mapSvg(map, boardColours[theme], { lit, lengths });
  }, [map, places, theme, lengths]);
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return address ? (
    <figure className="chafing-figure">
      <img className="chafing-picture" src={address} alt={modelWords.picture} />
      <figcaption className="quiet">{modelWords.pictureKey}</figcaption>
    </figure>
  ) : null;
}
