import { type ReactNode, useState } from 'react';
import type { UndrawnFind } from '#core/job/proposed-rub-spots.ts';
import { rubSpotKinds } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { nameOf } from '../../language/name-of.ts';
import { proposalWords as words } from '../../language/proposals.ts';
import { type LengthSystem, sayDistance } from '../../language/say-length.ts';
import { rubSpotKindWords } from '../../language/words.ts';
import { Button, Field, Select } from '../../parts/index.ts';
import type { SaidSpot } from '../../session/add-found-spot.ts';

const kinds = rubSpotKinds.map((value) => ({ value, label: rubSpotKindWords[value] }));

/** One place where a rub spot should be drawn: what it is, and the button that adds it. */
export function SpotProposal({
  map,
  find,
  lengths,
  say,
  onAdd,
  children,
}: {
  readonly map: MapDocument;
  readonly find: UndrawnFind;
  readonly lengths: LengthSystem;
  readonly say: (name: string) => string;
  readonly onAdd: (said: SaidSpot) => void;
  /** More that can be done about it. */
  readonly children?: ReactNode;
}) {
  const [kind, setKind] = useState<SaidSpot['kind']>('other');
  const [name, setName] = useState('');
  const segment = map.segments.get(find.segmentId);
  const { value, unit } = sayDistance(find.stationMm, lengths);
  const where = words.at(
    say(nameOf(map, find.segmentId)),
    `${value} ${unit}`,
    segment ? say(nameOf(map, segment.fromNodeId)) : '',
  );
  return (
    <form
      className="spot-proposal"
      aria-label={where}
      onSubmit={(event) => {
        event.preventDefault();
        onAdd({ name: name.trim(), kind });
      }}
    >
      <p>{where}</p>
      <div className="spot-proposal-fields">
        <Select label={words.kind} value={kind} options={kinds} onChange={setKind} />
        <Field label={words.name} value={name} maxLength={120} onChange={setName} />
      </div>
      <div className="button-row">
        <Button type="submit">{words.add}</Button>
        {children}
      </div>
    </form>
  );
}
