/** A node of a network: 0 is the body, the others count up to `nodeCount`. */
export type NetNode = number;

/** A two-pole with ohms. */
export interface Resistor {
  readonly a: NetNode;
  readonly b: NetNode;
  readonly ohms: number;
}

/** Holds `plus` above `minus` by `volts`. */
export interface VoltageSource {
  readonly plus: NetNode;
  readonly minus: NetNode;
  readonly volts: number;
}

/** Pushes `amps` out of `from` and into `to`. */
export interface CurrentSource {
  readonly from: NetNode;
  readonly to: NetNode;
  readonly amps: number;
}

/**
 * A direct-current network. `branches` are resistors whose own current is wanted (wire, contacts): they
 * may have 0 ohms, and a resistance added to one of them is a change of one matrix entry.
 */
export interface Network {
  /** Nodes besides the body. */
  readonly nodeCount: number;
  readonly resistors: readonly Resistor[];
  readonly branches: readonly Resistor[];
  readonly voltageSources: readonly VoltageSource[];
  readonly currentSources: readonly CurrentSource[];
}

/** A network with its body and nothing in it. */
export const emptyNetwork: Network = {
  nodeCount: 0,
  resistors: [],
  branches: [],
  voltageSources: [],
  currentSources: [],
};
