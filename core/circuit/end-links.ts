import type { CircuitEndKind } from '../map/kinds.ts';
import type { CircuitState } from './car-state.ts';

/**
 * What sits at an end of a circuit, in figures. The defaults are judgement (typical body electronics)
 * except the pull-up of 1 kilohm to 5 V, common practice, no source; a caller who knows better says so.
 */
export interface EndFigures {
  readonly pullUpVolts: number;
  readonly pullUpOhms: number;
  /** Resistance to the body of a control unit's input or output pin while it has no supply. */
  readonly unpoweredPinOhms: number;
  readonly supplyOhms: number;
  readonly driverOn: boolean;
  readonly driverOnOhms: number;
  readonly driverOffOhms: number;
  readonly switchClosedOhms: number;
  readonly switchOpenOhms: number;
  readonly sensorOhms: number;
  readonly loadOhms: number;
  readonly groundPointOhms: number;
}

export const typicalEnd: EndFigures = {
  pullUpVolts: 5,
  pullUpOhms: 1_000,
  unpoweredPinOhms: 10_000,
  supplyOhms: 0.02,
  driverOn: false,
  driverOnOhms: 0.05,
  driverOffOhms: 100_000,
  switchClosedOhms: 0.02,
  switchOpenOhms: 1_000_000,
  sensorOhms: 2_000,
  loadOhms: 10,
  groundPointOhms: 0.01,
};

/** The ties an end part makes from the wire's end: to the body, to battery positive, to a regulated voltage. */
export interface EndLinks {
  readonly bodyOhms: number | null;
  readonly railOhms: number | null;
  readonly source: { readonly volts: number; readonly ohms: number } | null;
}

/** Nothing plugged in. */
export const openEnd: EndLinks = { bodyOhms: null, railOhms: null, source: null };

/**
 * The ties of one end part as the car stood. A switch whose position nobody gave counts as open.
 * @example
 * endLinks('switch-to-ground', { apartNodeIds: [], switchClosed: true, ignitionOn: true, batteryConnected: true }, typicalEnd).bodyOhms // => 0.02
 */
export function endLinks(kind: CircuitEndKind, state: CircuitState, figures: EndFigures): EndLinks {
  const isPowered = state.ignitionOn && state.batteryConnected;
  switch (kind) {
    case 'fused-supply':
      return { ...openEnd, railOhms: figures.supplyOhms };
    case 'module-input-pull-up':
      return isPowered
        ? { ...openEnd, source: { volts: figures.pullUpVolts, ohms: figures.pullUpOhms } }
        : { ...openEnd, bodyOhms: figures.unpoweredPinOhms };
    case 'high-side-driver':
      return isPowered && figures.driverOn
        ? { ...openEnd, railOhms: figures.driverOnOhms }
        : { ...openEnd, bodyOhms: figures.driverOffOhms };
    case 'low-side-driver':
      return {
        ...openEnd,
        bodyOhms: isPowered && figures.driverOn ? figures.driverOnOhms : figures.driverOffOhms,
      };
    case 'switch-to-ground':
      return { ...openEnd, bodyOhms: state.switchClosed ? figures.switchClosedOhms : figures.switchOpenOhms };
    case 'sensor':
      return { ...openEnd, bodyOhms: figures.sensorOhms };
    case 'load':
      return { ...openEnd, bodyOhms: figures.loadOhms };
    case 'ground-point':
      return { ...openEnd, bodyOhms: figures.groundPointOhms };
    case 'other':
      return openEnd;
  }
}
