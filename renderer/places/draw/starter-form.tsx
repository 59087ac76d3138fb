import { type FormEvent, useState } from 'react';
import type { StarterStyle } from '#core/map/body-proportions.ts';
import { type BodySize, usualBodySize } from '#core/map/body-starters.ts';
import { addDefaultPanels } from '#core/map/commands/add-default-panels.ts';
import { addStarter } from '#core/map/commands/add-starter.ts';
import { changeDetails } from '#core/map/commands/change-details.ts';
import { setScale } from '#core/map/commands/set-scale.ts';
import { bodyStyles } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { drawWords } from '../../language/draw.ts';
import { starterWords } from '../../language/draw-first.ts';
import { bodyStyleWords } from '../../language/words.ts';
import { Button, Checkbox, Select } from '../../parts/index.ts';
import { inTurn } from '../../session/in-turn.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { optionsOf } from './options-of.ts';

/** Body styles a starter is drawn for. */
export const starterStyles = bodyStyles.filter((style): style is StarterStyle => style !== 'other');

const sizes = ['lengthMm', 'widthMm', 'wheelbaseMm'] as const;
const bounds: Readonly<Record<(typeof sizes)[number], { readonly min: number; readonly max: number }>> = {
  lengthMm: { min: 1_000, max: 20_000 },
  widthMm: { min: 500, max: 5_000 },
  wheelbaseMm: { min: 500, max: 15_000 },
};

/** Draws the outlines of a body to the measured car; on an empty map that also sets the scale. */
export function StarterForm({ onDrawn }: { readonly onDrawn?: () => void }) {
  const { map, make, showAll } = useDraw();
  const ownStyle = map.details.bodyStyle;
  const [style, setStyle] = useState<StarterStyle>(ownStyle === 'other' ? 'hatch' : ownStyle);
  /** What was measured on the car stays when another body is chosen; the rest is as usual for it. */
  const [measured, setMeasured] = useState<Partial<BodySize>>({});
  const size = { ...usualBodySize(style), ...measured };
  const tooLong = size.wheelbaseMm >= size.lengthMm;
  const [panels, setPanels] = useState(true);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    if (tooLong) return;
    const made = make(startedMap(map, style, size, panels), { label: 'edit.addStarter', select: [] });
    if (!made) return;
    showAll();
    onDrawn?.();
  };
  return (
    <form className="starter-form" onSubmit={send} aria-label={starterWords.again}>
      <Select
        label={starterWords.style}
        value={style}
        options={optionsOf(starterStyles, bodyStyleWords)}
        onChange={setStyle}
      />
      <div className="form-row">
        {sizes.map((field) => (
          <FigureField
            key={field}
            label={starterWords[field]}
            value={size[field]}
            unit={drawWords.units.mm}
            {...bounds[field]}
            places={0}
            onChange={(mm) => setMeasured({ ...measured, [field]: mm ?? size[field] })}
          />
        ))}
      </div>
      {tooLong ? (
        <p className="field-trouble" role="alert">
          {starterWords.wheelbaseTooLong(size.wheelbaseMm, size.lengthMm)}
        </p>
      ) : (
        <p className="field-hint">{starterWords.hint}</p>
      )}
      <Checkbox label={starterWords.withPanels} checked={panels} onChange={setPanels} />
      <Button type="submit" weight="main">
        {starterWords.draw}
      </Button>
    </form>
  );
}

/** The map with the outlines of a measured body, its usual panels if wished, and the scale those measures give. */
export function startedMap(map: MapDocument, style: StarterStyle, size: BodySize, panels: boolean) {
  const centre = map.details.centreLineYMm;
  const blank = map.outlines.size + map.segments.size + map.panels.size + map.rubSpots.size === 0;
  const steps: Parameters<typeof inTurn>[1][] = [(now) => addStarter(now, { style, size }, Math.random)];
  if (map.details.bodyStyle !== style) {
    steps.push((now) => changeDetails(now, { changes: { bodyStyle: style } }));
  }
  if (panels) steps.push((now) => addDefaultPanels(now, { style }, Math.random));
  // What is drawn to measure needs no scaling: the bumpers are the two known points.
  if (blank && map.details.scale === null) {
    const from = { xMm: 0, yMm: centre };
    const to = { xMm: size.lengthMm, yMm: centre };
    steps.push((now) => setScale(now, { from, to, distanceMm: size.lengthMm }));
  }
  return inTurn(map, ...steps);
}
