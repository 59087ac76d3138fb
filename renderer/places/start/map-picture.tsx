import type { MapSummary } from '#electron/contract/contract.ts';
import { pictureFrame, picturePath } from './picture-path.ts';

/** A vehicle map as a small picture: outlines thin, routes thick. Its name stands beside it. */
export function MapPicture({ picture }: { readonly picture: MapSummary['picture'] }) {
  const frame = pictureFrame([...picture.outlines, ...picture.routes]);
  if (!frame) {
    return (
      <svg className="map-picture" aria-hidden="true" viewBox="0 0 120 54">
        <rect className="picture-empty" x="10" y="8" width="100" height="38" rx="14" />
      </svg>
    );
  }
  return (
    <svg className="map-picture" aria-hidden="true" viewBox={frame.viewBox}>
      <g transform="scale(1 -1)">
        {picture.outlines.map((line, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a picture's lines have no names and never move.
          <path key={index} className="picture-outline" d={picturePath(line)} />
        ))}
        {picture.routes.map((line, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a picture's lines have no names and never move.
          <path key={index} className="picture-route" d={picturePath(line)} />
        ))}
      </g>
    </svg>
  );
}
