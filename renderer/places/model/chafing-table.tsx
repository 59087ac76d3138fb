import type { MapDocument } from '#core/map/map-document.ts';
import type { RequestOutput } from '#electron/contract/contract.ts';
import { closeWords, damageCauseWords, damageTypeWords } from '../../language/close.ts';
import { modelWords } from '../../language/model.ts';
import { nameOf } from '../../language/name-of.ts';
import { type LengthSystem, sayStretch } from '../../language/say-length.ts';
import { saySide } from '../../language/say-side.ts';
import { useMachineSettings } from '../../session/machine-settings.ts';

type Place = RequestOutput<'map.past'>['places'][number];
const words = modelWords.columns;

/** The same as the picture, to be read: each place with how often and why. */
export function ChafingTable({
  map,
  places,
}: {
  readonly map: MapDocument;
  readonly places: readonly Place[];
}) {
  const lengths = useMachineSettings((settings) => settings.lengths);
  const sides = useMachineSettings((settings) => settings.sides);
  const say = (name: string): string => saySide(name, map.details.driveSide, sides);
  return (
    <table className="chafing-table">
      <caption className="only-read-aloud">{modelWords.table}</caption>
      <thead>
        <tr>
          <th scope="col">{words.place}</th>
          <th scope="col">{words.causes}</th>
          <th scope="col">{words.notProved}</th>
          <th scope="col">{words.other}</th>
          <th scope="col">{words.sound}</th>
          <th scope="col">{words.kinds}</th>
        </tr>
      </thead>
      <tbody>
        {places.map((place) => (
          <tr key={`${place.segmentId} ${place.fromMm} ${place.partNodeId ?? ''}`}>
            <th scope="row">{placeName(map, place, lengths, say)}</th>
            <td>{place.causes}</td>
            <td>{place.notProved}</td>
            <td>{place.otherDamage}</td>
            <td>{place.sound}</td>
            <td>
              {[
                ...place.damageTypes.map((each) => damageTypeWords[each]),
                ...place.damageCauses.map((each) => damageCauseWords[each]),
              ].join('. ')}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function placeName(
  map: MapDocument,
  { partNodeId, segmentId, fromMm, toMm }: Place,
  lengths: LengthSystem,
  say: (name: string) => string,
): string {
  if (partNodeId) {
    return map.nodes.has(partNodeId)
      ? closeWords.found.inPart(say(nameOf(map, partNodeId)))
      : modelWords.gone;
  }
  const segment = map.segments.get(segmentId);
  if (!segment) return modelWords.gone;
  const { near, far, unit } = sayStretch(fromMm, toMm, lengths);
  const distance = near === far ? `${far} ${unit}` : `${near} – ${far} ${unit}`;
  return `${say(nameOf(map, segmentId))}: ${modelWords.from(distance, say(nameOf(map, segment.fromNodeId)))}`;
}
