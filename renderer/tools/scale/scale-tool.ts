import type { PlanPoint } from '#core/geometry/place.ts';
import { emptyOverlay } from '../../board/overlay.ts';
import { aligned } from '../aligned.ts';
import { lengthLabel } from '../live-length.ts';
import { stay, type Tool } from '../tool.ts';

/** Two points whose true distance is known. With both down, the place asks for that distance. */
export interface ScalePoints {
  readonly from: PlanPoint | null;
  readonly to: PlanPoint | null;
  readonly pointer: PlanPoint | null;
}

/** Scale: two presses; the true distance is typed beside the board. */
export const scaleTool: Tool<ScalePoints> = {
  start: { from: null, to: null, pointer: null },
  step(state, event) {
    if (event.type === 'key') return event.key === 'Enter' ? stay(state) : stay(scaleTool.start);
    const at = event.shift && state.from ? aligned(state.from, event.at) : event.at;
    if (event.type !== 'down') return stay({ ...state, pointer: at });
    if (!state.from || state.to) return stay({ from: at, to: null, pointer: at });
    return stay({ from: state.from, to: at, pointer: null });
  },
  overlay(state, view) {
    const end = state.to ?? state.pointer;
    if (!state.from || !end) return emptyOverlay;
    const points = [state.from, end];
    return {
      lines: [{ points, closed: false, style: 'measure' }],
      points: [state.from, ...(state.to ? [state.to] : [])].map((at) => ({ at, style: 'placed' as const })),
      labels: lengthLabel(points, end, view.lengths),
      box: null,
    };
  },
};
