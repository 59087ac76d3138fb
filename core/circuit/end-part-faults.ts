import type { CircuitEnd } from '../map/records.ts';
import type { EndFigures } from './end-links.ts';

/** An end part as it would be with one fault of its own. */
export interface FaultyEnd {
  readonly fault: 'stuck-on' | 'stuck-off' | 'shorted' | 'dead' | 'poor-ground';
  readonly end: CircuitEnd;
  readonly figures: EndFigures;
}

/**
 * The ways the part at an end may itself be at fault: stuck switch, dead or shorted load, input held low
 * or its pull-up gone. Figures are judgement. Empty for an end nobody described.
 * @example
 * endPartFaults({ nodeId: 'node:far', kind: 'switch-to-ground' }, typicalEnd).map((each) => each.fault) // => ['stuck-on', 'stuck-off']
 */
export function endPartFaults(end: CircuitEnd, figures: EndFigures): readonly FaultyEnd[] {
  const as = (
    fault: FaultyEnd['fault'],
    kind: CircuitEnd['kind'],
    changes: Partial<EndFigures> = {},
  ): FaultyEnd => ({ fault, end: { ...end, kind }, figures: { ...figures, ...changes } });
  const dead = as('dead', 'other');
  switch (end.kind) {
    case 'switch-to-ground':
      return [
        as('stuck-on', end.kind, { switchOpenOhms: 1 }),
        as('stuck-off', end.kind, { switchClosedOhms: figures.switchOpenOhms }),
      ];
    case 'module-input-pull-up':
      return [as('shorted', 'ground-point', { groundPointOhms: 10 }), dead];
    case 'high-side-driver':
      return [as('stuck-on', 'fused-supply'), as('stuck-off', 'other')];
    case 'low-side-driver':
      return [as('stuck-on', 'ground-point', { groundPointOhms: 0.1 }), as('stuck-off', 'other')];
    case 'sensor':
      return [as('shorted', end.kind, { sensorOhms: 1 }), dead];
    case 'load':
      return [as('shorted', end.kind, { loadOhms: 0.2 }), dead];
    case 'ground-point':
      return [as('poor-ground', end.kind, { groundPointOhms: 30 }), dead];
    case 'fused-supply':
      return [dead];
    case 'other':
      return [];
  }
}
