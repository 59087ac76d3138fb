import { useState } from 'react';
import { findWords } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { tapeUnits } from '../../language/say-length.ts';
import { Button, NumberField } from '../../parts/index.ts';
import { stretchesBetween } from '../../session/stretches-between.ts';
import type { Piece } from '../../straight/straight-picture.ts';
import { distanceBounds, pieceAtDistance } from './exact-place.ts';
import { useFind } from './find-context.ts';

const words = findWords.found;

/** Narrows a find that covers a whole opening to the place a tape gives. */
export function FoundPlace({
  pieces,
  entryId,
}: {
  readonly pieces: readonly Piece[];
  readonly entryId: `entry:${string}`;
}) {
  const { open, standing, session, lengths, say } = useFind();
  const [distance, setDistance] = useState<number | null>(null);
  const { line, map } = open;
  const first = pieces[0];
  const last = pieces.at(-1);
  if (!line || !first || !last || last.toMm - first.fromMm < 40) return null;
  const whole = { fromMm: first.fromMm, toMm: last.toMm };
  const bounds = distanceBounds(map, line, whole);
  const { mm: unitMm, unit } = tapeUnits[lengths];
  const narrow = (): void => {
    const look = standing.find(({ id }) => id === entryId);
    if (distance === null || look?.type !== 'inspection') return;
    const { id: _id, at: _at, ...rest } = look;
    const place = pieceAtDistance(map, line, whole, distance * unitMm);
    const stretches = [...stretchesBetween(line, place.fromMm, place.toMm)];
    session.add({ type: 'take-back', entryId }, { ...rest, stretches });
  };
  return (
    <form
      className="found-place"
      onSubmit={(event) => {
        event.preventDefault();
        narrow();
      }}
    >
      <NumberField
        label={words.exactly(say(nameOf(map, bounds.nodeId)))}
        value={distance}
        unit={unit}
        min={bounds.leastMm / unitMm}
        max={bounds.mostMm / unitMm}
        onChange={setDistance}
      />
      <Button type="submit" disabled={distance === null}>
        {words.setPlace}
      </Button>
    </form>
  );
}
