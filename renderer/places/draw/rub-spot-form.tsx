import { changeRubSpot } from '#core/map/commands/change-rub-spot.ts';
import { rubSpotKinds } from '#core/map/kinds.ts';
import type { RubSpot } from '#core/map/records.ts';
import { drawWords } from '../../language/draw.ts';
import { rubSpotKindWords } from '../../language/words.ts';
import { Choice, Select, TextArea } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { KindReason, SpotHazard } from './hazard/spot-hazard.tsx';
import { NameField } from './name-field.tsx';
import { optionsOf } from './options-of.ts';

const sides = ['below', 'level', 'above'] as const;
const severities = ['1', '2', '3'] as const;

/** A place where the loom can rub. */
export function RubSpotForm({ spot }: { readonly spot: RubSpot }) {
  const { map, make } = useDraw();
  const rubSpotId = spot.id;
  const change = (changes: Partial<Omit<RubSpot, 'id'>>, joinKey?: string): void => {
    make(changeRubSpot(map, { rubSpotId, changes }), {
      label: 'edit.changeRubSpot',
      ...(joinKey ? { joinKey: `${rubSpotId}.${joinKey}` } : {}),
    });
  };
  const heights = new Set(spot.points.map((point) => point.zMm));
  return (
    <section className="form" aria-label={spot.name}>
      <h2>{spot.name || rubSpotKindWords[spot.kind]}</h2>
      <NameField value={spot.name} onChange={(name) => change({ name }, 'name')} />
      <Select
        label={drawWords.fields.kind}
        value={spot.kind}
        options={optionsOf(rubSpotKinds, rubSpotKindWords)}
        onChange={(kind) => change({ kind })}
      />
      <KindReason kind={spot.kind} />
      <SpotHazard spot={spot} />
      <Choice
        label={drawWords.fields.severity}
        value={String(spot.severity) as (typeof severities)[number]}
        options={optionsOf(severities, drawWords.fields.severities)}
        onChange={(severity) => change({ severity: Number(severity) as RubSpot['severity'] })}
      />
      <FigureField
        label={drawWords.fields.clearance}
        value={spot.clearanceMm}
        unit={drawWords.units.mm}
        min={0}
        max={2_000}
        mayBeEmpty
        hint={drawWords.fields.clearanceHint}
        onChange={(clearanceMm) => change({ clearanceMm }, 'clearanceMm')}
      />
      <Choice
        label={drawWords.fields.side}
        value={spot.side}
        options={optionsOf(sides, drawWords.fields.sides)}
        onChange={(side) => change({ side })}
      />
      <div className="form-row">
        <FigureField
          label={drawWords.fields.z}
          value={heights.size === 1 ? (spot.points[0]?.zMm ?? 0) : null}
          unit={drawWords.units.mm}
          mayBeEmpty={heights.size > 1}
          onChange={(zMm) => {
            if (zMm !== null) change({ points: spot.points.map((point) => ({ ...point, zMm })) }, 'zMm');
          }}
        />
        <FigureField
          label={drawWords.fields.timesFound}
          value={spot.timesFound}
          unit={drawWords.units.times}
          min={0}
          max={100_000}
          places={0}
          onChange={(times) => change({ timesFound: Math.round(times ?? 0) }, 'timesFound')}
        />
      </div>
      <p className="quiet">
        {drawWords.shapes[spot.shape]}, {drawWords.fields.corners(spot.points.length)}
      </p>
      <TextArea
        label={drawWords.fields.note}
        value={spot.note}
        maxLength={4_000}
        onChange={(note) => change({ note }, 'note')}
      />
    </section>
  );
}
