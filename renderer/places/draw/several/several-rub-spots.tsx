import { changeRubSpot } from '#core/map/commands/change-rub-spot.ts';
import { rubSpotKinds } from '#core/map/kinds.ts';
import type { RubSpot } from '#core/map/records.ts';
import { drawWords } from '../../../language/draw.ts';
import { rubSpotKindWords } from '../../../language/words.ts';
import { optionsOf } from '../options-of.ts';
import { SharedChoice, SharedFigure, SharedNote, SharedSelect } from './shared-fields.tsx';
import { sharedValue } from './shared-value.ts';
import { useChangeEach } from './use-change-each.ts';

const sides = ['below', 'level', 'above'] as const;
const severities = ['1', '2', '3'] as const;
const words = drawWords.fields;

/** The height of a spot all of whose points have one; NaN stands for none and differs from everything. */
const heightOf = (spot: RubSpot): number => sharedValue(spot.points.map((point) => point.zMm)) ?? Number.NaN;

/** What several rub spots have in common. */
export function SeveralRubSpots({ spots }: { readonly spots: readonly RubSpot[] }) {
  const change = useChangeEach(spots, (map, { id }, changes) =>
    changeRubSpot(map, { rubSpotId: id, changes }),
  );
  return (
    <>
      <SharedSelect
        label={words.kind}
        values={spots.map((spot) => spot.kind)}
        options={optionsOf(rubSpotKinds, rubSpotKindWords)}
        onChange={(kind) => change({ kind })}
      />
      <SharedChoice
        label={words.severity}
        values={spots.map((spot) => String(spot.severity) as (typeof severities)[number])}
        options={optionsOf(severities, words.severities)}
        onChange={(severity) => change({ severity: Number(severity) as RubSpot['severity'] })}
      />
      <SharedFigure
        label={words.clearance}
        values={spots.map((spot) => spot.clearanceMm)}
        unit={drawWords.units.mm}
        min={0}
        max={2_000}
        mayBeEmpty
        hint={words.clearanceHint}
        onChange={(clearanceMm) => change({ clearanceMm }, 'clearanceMm')}
      />
      <SharedChoice
        label={words.side}
        values={spots.map((spot) => spot.side)}
        options={optionsOf(sides, words.sides)}
        onChange={(side) => change({ side })}
      />
      <SharedFigure
        label={words.z}
        values={spots.map(heightOf)}
        unit={drawWords.units.mm}
        onChange={(mm) =>
          change((spot) => ({ points: spot.points.map((point) => ({ ...point, zMm: mm ?? 0 })) }), 'zMm')
        }
      />
      <SharedNote values={spots.map((spot) => spot.note)} onChange={(note) => change({ note }, 'note')} />
    </>
  );
}
