import { type KeyboardEvent, type PointerEvent, useRef } from 'react';

/** A point of the profile that can be dragged or stepped up and down. */
export function HeightHandle({
  x,
  y,
  zMm,
  label,
  said,
  mmPerPx,
  onDrag,
  onDrop,
  onCancel,
  onStep,
  onFocusBeside,
}: {
  readonly x: number;
  readonly y: number;
  readonly zMm: number;
  readonly label: string;
  readonly said: string;
  readonly mmPerPx: number;
  readonly onDrag: (zMm: number) => void;
  readonly onDrop: (zMm: number) => void;
  readonly onCancel: () => void;
  readonly onStep: (zMm: number) => void;
  readonly onFocusBeside: (by: 1 | -1) => void;
}) {
  const grip = useRef<{ readonly yPx: number; readonly zMm: number; zNow: number } | null>(null);
  const down = (event: PointerEvent<SVGGElement>): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus();
    grip.current = { yPx: event.clientY, zMm, zNow: zMm };
  };
  const move = (event: PointerEvent): void => {
    const held = grip.current;
    if (!held) return;
    const z = bounded(Math.round(held.zMm + (held.yPx - event.clientY) * mmPerPx));
    if (z === held.zNow) return;
    held.zNow = z;
    onDrag(z);
  };
  const up = (): void => {
    const held = grip.current;
    grip.current = null;
    if (!held) return;
    if (held.zNow === held.zMm) onCancel();
    else onDrop(held.zNow);
  };
  const cancel = (): void => {
    if (grip.current) onCancel();
    grip.current = null;
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && grip.current) cancel();
    else if (event.key === 'ArrowLeft') onFocusBeside(-1);
    else if (event.key === 'ArrowRight') onFocusBeside(1);
    else {
      const by = steps[event.key];
      if (by === undefined) return;
      onStep(bounded(Math.round(zMm + (event.shiftKey ? Math.sign(by) : by))));
    }
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <g
      className="height-handle"
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-orientation="vertical"
      aria-valuenow={Math.round(zMm)}
      aria-valuemin={-limitMm}
      aria-valuemax={limitMm}
      aria-valuetext={said}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={cancel}
      onKeyDown={key}
    >
      <circle className="height-reach" cx={x} cy={y} r={22} />
      <circle className="height-dot" cx={x} cy={y} r={7} />
    </g>
  );
}

const steps: Readonly<Record<string, number>> = {
  ArrowUp: 10,
  ArrowDown: -10,
  PageUp: 100,
  PageDown: -100,
};

/** A roof is under four metres up, a sump above two down. */
const limitMm = 4_000;
const bounded = (zMm: number): number => Math.min(limitMm, Math.max(-limitMm, zMm));
