import { useState } from 'react';
import { planDistanceMm } from '#core/geometry/point.ts';
import { changeDetails } from '#core/map/commands/change-details.ts';
import { bodyStyles } from '#core/map/kinds.ts';
import type { MapDetails } from '#core/map/records.ts';
import { drawWords } from '../../language/draw.ts';
import { sayDrawnLength } from '../../language/say-drawn-length.ts';
import { bodyStyleWords, driveSideLongWords } from '../../language/words.ts';
import { Choice, Field, Figure, Select, TextArea } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { optionsOf } from './options-of.ts';
import { TagActions } from './tag-actions.tsx';

const sides = ['left', 'right'] as const;

/** What the map as a whole is of. */
export function MapForm() {
  const { map, make, lengths } = useDraw();
  const { details } = map;
  const scale =
    details.scale && sayDrawnLength(planDistanceMm(details.scale.from, details.scale.to), lengths);
  const change = (changes: Partial<Omit<MapDetails, 'id' | 'scale'>>, joinKey?: string): void => {
    make(changeDetails(map, { changes }), {
      label: `edit.changeDetails.${Object.keys(changes)[0] ?? ''}`,
      ...(joinKey ? { joinKey: `details.${joinKey}` } : {}),
    });
  };
  /** An empty name cannot be kept, but it must be possible to clear the field on the way to another. */
  const [cleared, setCleared] = useState(false);
  return (
    <section className="form" aria-label={drawWords.mapDetails}>
      <h2>{drawWords.mapDetails}</h2>
      <Field
        label={drawWords.fields.name}
        value={cleared ? '' : details.name}
        maxLength={120}
        {...(cleared ? { trouble: drawWords.fields.required } : {})}
        onChange={(name) => {
          setCleared(name === '');
          if (name !== '') change({ name }, 'name');
        }}
      />
      <Select
        label={drawWords.fields.bodyStyle}
        value={details.bodyStyle}
        options={optionsOf(bodyStyles, bodyStyleWords)}
        onChange={(bodyStyle) => change({ bodyStyle })}
      />
      <Choice
        label={drawWords.fields.driveSide}
        value={details.driveSide}
        options={optionsOf(sides, driveSideLongWords)}
        onChange={(driveSide) => change({ driveSide })}
      />
      <p>
        {drawWords.scale.title}{' '}
        {scale ? (
          <Figure value={scale.text} unit={scale.unit} />
        ) : (
          <span className="quiet">{drawWords.scale.notSet}</span>
        )}
      </p>
      {lengths === 'imperial' ? <p className="field-hint">{drawWords.inMm}</p> : null}
      <FigureField
        label={drawWords.fields.centreLine}
        value={details.centreLineYMm}
        unit={drawWords.units.mm}
        onChange={(centreLineYMm) => change({ centreLineYMm: centreLineYMm ?? 0 }, 'centreLineYMm')}
      />
      <TextArea
        label={drawWords.fields.note}
        value={details.note}
        maxLength={4_000}
        onChange={(note) => change({ note }, 'note')}
      />
      <TagActions />
    </section>
  );
}
