import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import type { PanelId } from '#core/quantity/id.ts';
import { nameOf } from '../../../language/name-of.ts';
import { orderWords } from '../../../language/order.ts';
import { Button, Notice } from '../../../parts/index.ts';
import { useWidth } from '../../../straight/use-width.ts';
import { useDraw } from '../draw-context.ts';
import { ringSentence, turnedArrow } from './order-arrow.ts';
import './order.css';
import { type OrderArrow, type OrderBox, orderPicture } from './order-picture.ts';

/** A pointer that moved less than this pressed a box and did not drag from it. */
const dragPx = 6;

interface Pull {
  readonly first: PanelId;
  readonly x: number;
  readonly y: number;
}

/**
 * What must be off before what, among some panels. An arrow is drawn by dragging from box to box, or by
 * pressing the one and then the other; the same again, or pressing the arrow, takes it out.
 */
export function OrderDiagram({
  ids,
  marked = null,
  onGo,
}: {
  readonly ids: readonly PanelId[];
  /** The panel the diagram is about. */
  readonly marked?: PanelId | null;
  readonly onGo?: (id: PanelId) => void;
}) {
  const { map, make } = useDraw();
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, 290);
  const [first, setFirst] = useState<PanelId | null>(null);
  const [pull, setPull] = useState<Pull | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const picture = orderPicture(map.panels, ids, width);
  const { boxPx } = picture;

  const turn = (from: PanelId, to: PanelId): void => {
    const patch = turnedArrow(map, from, to);
    const ring = ringSentence(map, from, to, patch);
    setRefused(ring);
    setFirst(null);
    if (ring === null) make(patch, { label: 'edit.panelOrder' });
  };
  const press = (id: PanelId): void => {
    if (first === null) {
      setRefused(null);
      setFirst(id);
    } else if (first === id) setFirst(null);
    else turn(first, id);
  };
  const boxAt = (x: number, y: number): OrderBox | undefined =>
    picture.boxes.find(
      ({ xPx, yPx }) => x >= xPx && x <= xPx + boxPx.width && y >= yPx && y <= yPx + boxPx.height,
    );
  const pulled = picture.boxes.find(({ id }) => id === pull?.first);
  const waitsFor = (id: PanelId): readonly string[] =>
    (map.panels.get(id)?.offFirst ?? []).map((each) => nameOf(map, each));

  return (
    <div className="order">
      {refused ? <Notice tone="failed">{refused}</Notice> : null}
      {/* biome-ignore lint/a11y/useSemanticElements: a diagram of buttons, not a form. */}
      <div
        ref={frame}
        className="order-diagram"
        role="group"
        aria-label={orderWords.picture}
        style={{ height: picture.heightPx }}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' || first === null) return;
          event.stopPropagation();
          setFirst(null);
        }}
      >
        <svg width={width} height={picture.heightPx} aria-hidden="true">
          {picture.arrows.map((arrow) => (
            <ArrowLine key={`${arrow.first} ${arrow.waits}`} arrow={arrow} />
          ))}
          {pull && pulled ? (
            <line
              className="order-pull"
              x1={pulled.xPx + boxPx.width / 2}
              y1={pulled.yPx + boxPx.height}
              x2={pull.x}
              y2={pull.y}
            />
          ) : null}
        </svg>
        {picture.looseYPx === null ? null : (
          <h3 className="order-loose" style={{ top: picture.looseYPx - 26 }}>
            {orderWords.loose}
          </h3>
        )}
        {picture.boxes.map((box) => (
          <PanelBox
            key={box.id}
            box={box}
            size={boxPx}
            name={nameOf(map, box.id)}
            said={orderWords.panel(nameOf(map, box.id), waitsFor(box.id))}
            marked={box.id === marked}
            pressed={box.id === first}
            onPress={() => press(box.id)}
            onPull={(x, y) => setPull(x === null || y === null ? null : { first: box.id, x, y })}
            onDrop={(x, y) => {
              const over = boxAt(x, y);
              setPull(null);
              if (over && over.id !== box.id) turn(box.id, over.id);
            }}
          />
        ))}
        {picture.arrows.map((arrow) => (
          <ArrowButton
            key={`${arrow.first} ${arrow.waits}`}
            arrow={arrow}
            label={orderWords.takeOut(nameOf(map, arrow.first), nameOf(map, arrow.waits))}
            onTakeOut={() => {
              turn(arrow.first, arrow.waits);
              // The arrow is gone: whoever came by keyboard goes on at the panel it led to.
              frame.current?.querySelector<HTMLElement>(`[data-panel="${arrow.waits}"]`)?.focus();
            }}
          />
        ))}
      </div>
      {first === null ? (
        <p className="field-hint">{orderWords.hint}</p>
      ) : (
        <div className="order-picked" aria-live="polite">
          <p>{orderWords.picked(nameOf(map, first))}</p>
          <div className="button-row">
            <Button onClick={() => setFirst(null)}>{orderWords.drop}</Button>
            {onGo && first !== marked ? (
              <Button onClick={() => onGo(first)}>{orderWords.goTo(nameOf(map, first))}</Button>
            ) : null}
          </div>
        </div>
      )}
    </div>
  );
}

function PanelBox({
  box,
  size,
  name,
  said,
  marked,
  pressed,
  onPress,
  onPull,
  onDrop,
}: {
  readonly box: OrderBox;
  readonly size: { readonly width: number; readonly height: number };
  readonly name: string;
  readonly said: string;
  readonly marked: boolean;
  readonly pressed: boolean;
  readonly onPress: () => void;
  readonly onPull: (x: number | null, y: number | null) => void;
  readonly onDrop: (x: number, y: number) => void;
}) {
  const start = useRef<{ readonly x: number; readonly y: number; moved: boolean } | null>(null);
  const inDiagram = (event: PointerEvent<HTMLElement>): readonly [number, number] => {
    const around = event.currentTarget.parentElement?.getBoundingClientRect();
    return [event.clientX - (around?.left ?? 0), event.clientY - (around?.top ?? 0)];
  };
  return (
    <button
      type="button"
      className="order-box"
      data-panel={box.id}
      style={{ left: box.xPx, top: box.yPx, ...size }}
      aria-label={said}
      aria-pressed={pressed}
      aria-current={marked ? 'true' : undefined}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        start.current = { x: event.clientX, y: event.clientY, moved: false };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        const held = start.current;
        if (!held || event.buttons === 0) return;
        held.moved ||= Math.hypot(event.clientX - held.x, event.clientY - held.y) > dragPx;
        if (held.moved) onPull(...inDiagram(event));
      }}
      onPointerUp={(event) => {
        if (start.current?.moved) onDrop(...inDiagram(event));
      }}
      onPointerCancel={() => {
        start.current = null;
        onPull(null, null);
      }}
      onClick={(event) => {
        // The end of a drag is a click too; one from the keyboard has no press count.
        if (event.detail === 0 || !start.current?.moved) onPress();
        start.current = null;
      }}
    >
      {name}
    </button>
  );
}

function ArrowLine({ arrow: { way } }: { readonly arrow: OrderArrow }) {
  const [start, ...rest] = way;
  const end = way.at(-1);
  if (!start || !end) return null;
  let line = `M${start.xPx} ${start.yPx}`;
  let before = start;
  rest.forEach((point, i) => {
    const last = i === rest.length - 1;
    const y = last ? point.yPx - 4 : point.yPx;
    // Straight past a row, bent between two.
    if (i % 2 === 1) line += `L${point.xPx} ${y}`;
    else {
      const bend = (point.yPx - before.yPx) / 2;
      line += `C${before.xPx} ${before.yPx + bend} ${point.xPx} ${point.yPx - bend} ${point.xPx} ${y}`;
    }
    before = point;
  });
  const head = `M${end.xPx - 5} ${end.yPx - 9}L${end.xPx} ${end.yPx - 1}L${end.xPx + 5} ${end.yPx - 9}`;
  return (
    <g className="order-arrow">
      <path d={line} />
      <path d={head} />
    </g>
  );
}

/** How far before its head an arrow is taken out: there every arrow stands by itself. */
const cutPx = 20;

/** The mark on an arrow by which it is taken out. */
function ArrowButton({
  arrow,
  label,
  onTakeOut,
}: {
  readonly arrow: OrderArrow;
  readonly label: string;
  readonly onTakeOut: () => void;
}) {
  const end = arrow.way.at(-1);
  if (!end) return null;
  const key = (event: KeyboardEvent): void => {
    if (event.key !== 'Delete' && event.key !== 'Backspace') return;
    event.preventDefault();
    event.stopPropagation();
    onTakeOut();
  };
  return (
    <button
      type="button"
      className="order-cut"
      style={{ left: end.xPx, top: end.yPx - cutPx }}
      aria-label={label}
      title={label}
      onClick={onTakeOut}
      onKeyDown={key}
    />
  );
}
