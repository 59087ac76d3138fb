import type { PlanPoint } from '#core/geometry/place.ts';
import type { ScreenPoint } from './camera.ts';
import type { Hit } from './hit.ts';

/** What the pointer did on the board, in plan places, with what lies under it. */
export interface BoardPointer {
  readonly type: 'down' | 'move' | 'up' | 'double' | 'cancel' | 'leave';
  readonly at: PlanPoint;
  readonly screen: ScreenPoint;
  /** Best first; see `hitsAt`. */
  readonly hits: readonly Hit[];
  /** How near counts as on: wider for a finger than for a mouse. */
  readonly reachMm: number;
  readonly shift: boolean;
  readonly alt: boolean;
}
