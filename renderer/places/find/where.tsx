import type { SaidPlace } from '../../language/say-where.ts';
import { Figure } from '../../parts/index.ts';

/** A place on the loom with its figures large enough to read from a metre away. */
export function Where({ place }: { readonly place: SaidPlace }) {
  return (
    <span className="where">
      {place.figures === '' ? null : <Figure value={place.figures} unit={place.unit} large />} {place.words}
    </span>
  );
}
