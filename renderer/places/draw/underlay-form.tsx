import { changeUnderlay } from '#core/map/commands/change-underlay.ts';
import type { Underlay } from '#core/map/records.ts';
import { drawWords } from '../../language/draw.ts';
import { pictureWords } from '../../language/draw-first.ts';
import { Button, Checkbox, FieldFrame, Notice } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { NameField } from './name-field.tsx';

const degree = Math.PI / 180;

/** A picture under the drawing: how strong it shows, and where it lies. */
export function UnderlayForm({ underlay }: { readonly underlay: Underlay }) {
  const { map, make, takeTool, picturesGone } = useDraw();
  const underlayId = underlay.id;
  const change = (changes: Partial<Omit<Underlay, 'id'>>, joinKey?: string): void => {
    make(changeUnderlay(map, { underlayId, changes }), {
      label: 'edit.changeUnderlay',
      ...(joinKey ? { joinKey: `${underlayId}.${joinKey}` } : {}),
    });
  };
  const strength = Math.round(underlay.opacity * 100);
  return (
    <section className="form" aria-label={underlay.name}>
      <h2>{underlay.name || drawWords.tools.underlay}</h2>
      {picturesGone.has(underlay.imageSha256) ? <Notice tone="caution">{pictureWords.gone}</Notice> : null}
      <NameField value={underlay.name} onChange={(name) => change({ name }, 'name')} />
      <FieldFrame label={pictureWords.strength} id={`${underlayId}-strength`}>
        <div className="number-row">
          <input
            id={`${underlayId}-strength`}
            className="slide"
            type="range"
            min={5}
            max={100}
            step={5}
            value={strength}
            onChange={(event) => change({ opacity: Number(event.target.value) / 100 }, 'opacity')}
          />
          <span className="figure">
            {strength} <span className="unit">{pictureWords.strengthUnit}</span>
          </span>
        </div>
      </FieldFrame>
      <Checkbox
        label={pictureWords.hidden}
        checked={underlay.hidden}
        onChange={(hidden) => change({ hidden })}
      />
      <Button weight="main" onClick={() => takeTool('underlay')}>
        {pictureWords.place}
      </Button>
      <div className="form-row">
        {(['xMm', 'yMm'] as const).map((axis) => (
          <FigureField
            key={axis}
            label={axis === 'xMm' ? pictureWords.x : pictureWords.y}
            value={underlay.origin[axis]}
            unit={drawWords.units.mm}
            onChange={(mm) => change({ origin: { ...underlay.origin, [axis]: mm ?? 0 } }, axis)}
          />
        ))}
      </div>
      <div className="form-row">
        <FigureField
          label={pictureWords.pixel}
          value={underlay.mmPerPx}
          unit={drawWords.units.mm}
          min={0.001}
          max={1_000}
          places={4}
          onChange={(mmPerPx) => {
            if (mmPerPx !== null) change({ mmPerPx }, 'mmPerPx');
          }}
        />
        <FigureField
          label={pictureWords.turn}
          value={underlay.turnRad / degree}
          unit={pictureWords.degrees}
          min={-360}
          max={360}
          places={2}
          onChange={(turn) => change({ turnRad: (turn ?? 0) * degree }, 'turnRad')}
        />
      </div>
    </section>
  );
}
