import type { CircuitNetwork, WireLayout } from '#core/circuit/circuit-network.ts';
import { meterInputOhms } from '#core/circuit/metered-circuit.ts';
import type { Network } from '#core/circuit/network.ts';
import type { FaultClass } from '#core/map/kinds.ts';

/** A fault to build into a network the long way: links parted at the place and a resistor put in. */
export interface BuiltFault {
  readonly faultClass: FaultClass;
  readonly link: number;
  readonly share: number;
  readonly ohms: number;
  /** The place on the second wire, for wire-to-wire. */
  readonly other?: { readonly link: number; readonly share: number };
}

/**
 * The network with the fault really in it: what the rank-one change must agree with. Straight assembly,
 * no code shared with the reduction.
 */
export function withFault(network: CircuitNetwork, fault: BuiltFault): Network {
  let nodeCount = network.nodeCount;
  const branches = network.branches.map((each) => ({ ...each }));
  const resistors = network.resistors.map((each) => ({ ...each }));
  const partAt = (layout: WireLayout, link: number, share: number): number => {
    const branch = branches[layout.branchOf[link] as number];
    if (!branch) throw new Error('the fault must sit on a link that is there');
    const tap = ++nodeCount;
    resistors.push({ a: tap, b: branch.b, ohms: branch.ohms * (1 - share) });
    branch.b = tap;
    branch.ohms *= share;
    return tap;
  };
  if (fault.faultClass === 'open' || fault.faultClass === 'high-resistance') {
    const branch = branches[network.main.branchOf[fault.link] as number];
    if (branch) branch.ohms += fault.ohms;
  } else {
    const tap = partAt(network.main, fault.link, fault.share);
    let partner = 0;
    if (fault.faultClass === 'short-to-supply') partner = network.railNode;
    if (fault.faultClass === 'wire-to-wire') {
      partner =
        fault.other && network.other
          ? partAt(network.other, fault.other.link, fault.other.share)
          : (network.neighbourNode ?? 0);
    }
    resistors.push({ a: tap, b: partner, ohms: fault.ohms });
  }
  return { ...network, nodeCount, branches, resistors };
}

/** The network as lines for a circuit simulator, with the same tiny tie from every node to the body. */
export function netlist(network: Network): string {
  const lines = ['generated circuit'];
  network.resistors.forEach(({ a, b, ohms }, i) => {
    lines.push(`r${i} ${a} ${b} ${ohms}`);
  });
  network.branches.forEach(({ a, b, ohms }, i) => {
    // The simulator makes a milliohm of no ohms at all; a source of no volts is a splice.
    lines.push(ohms === 0 ? `vb${i} ${a} ${b} 0` : `rb${i} ${a} ${b} ${ohms}`);
  });
  for (let node = 1; node <= network.nodeCount; node++) lines.push(`rg${node} ${node} 0 1e12`);
  network.voltageSources.forEach(({ plus, minus, volts }, i) => {
    lines.push(`v${i} ${plus} ${minus} ${volts}`);
  });
  network.currentSources.forEach(({ from, to, amps }, i) => {
    lines.push(`i${i} ${from} ${to} ${amps}`);
  });
  return [...lines, '.op', '.end'].join('\n');
}

/** Ohms the meter's own input makes of an outer resistance. */
export function besideMeter(ohms: number): number {
  return (ohms * meterInputOhms) / (ohms + meterInputOhms);
}
