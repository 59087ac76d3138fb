import { Simulation } from 'eecircuit-engine';
import { beforeAll, describe, expect, test } from 'vitest';
import { faultResponse, isSeriesClass } from '#core/circuit/fault-response.ts';
import { floatingIslands } from '#core/circuit/network-islands.ts';
import { solveNetwork } from '#core/circuit/solve-network.ts';
import { exactVolts } from '#tests/core/circuit/exact-volts.ts';
import { netlist, withFault } from '#tests/core/circuit/explicit-fault.ts';
import { generatedCases } from '#tests/core/circuit/generated-readings.ts';

/** Reference: ngspice 45 in WebAssembly (eecircuit-engine 1.8.0), operating point. */
const simulation = new Simulation();

beforeAll(async () => {
  await simulation.start();
});

async function simulated(text: string, node: number): Promise<(node: number) => number> {
  simulation.setNetList(text);
  const run = await simulation.runSim();
  // A bad netlist gives an answer all the same, so its complaints are looked at first.
  expect(simulation.getError()).toEqual([]);
  const of = (wanted: number): number => {
    if (wanted === 0) return 0;
    const found = run.data.find(({ name }) => name === `v(${wanted})`);
    return found?.values[0] as number;
  };
  expect(Number.isFinite(of(node))).toBe(true);
  return of;
}

describe('networks against a circuit simulator', () => {
  test('every node of over 100 generated circuits with faults agrees to a millionth', async () => {
    let compared = 0;
    for (const { metered, fault } of generatedCases(200, 41)) {
      const network = withFault(metered.network, fault);
      if (floatingIslands(network).length > 0) continue;
      const answer = solveNetwork(network);
      if (answer.outcome !== 'solved') throw new Error(answer.outcome);
      const volts = await simulated(netlist(network), 1);
      const largest = Math.max(...answer.volts.map(Math.abs));
      for (let node = 1; node <= network.nodeCount; node++) {
        const own = answer.volts[node] as number;
        expect(Math.abs(own - volts(node))).toBeLessThanOrEqual(
          1e-6 * Math.abs(volts(node)) + 1e-10 * largest + 1e-11,
        );
      }
      compared++;
    }
    expect(compared).toBeGreaterThan(100);
  }, 60_000);

  test('what the meter would show for 300 generated faults agrees to a millionth', async () => {
    let agreed = 0;
    for (const { metered, fault } of generatedCases(300, 97)) {
      const response = faultResponse(metered, fault.faultClass, {
        link: Int32Array.of(fault.link),
        share: Float64Array.of(fault.share),
      });
      const theta = isSeriesClass(fault.faultClass) ? 1 / fault.ohms : fault.ohms;
      const shown =
        response.sound - (response.numerator[0] as number) / (theta + (response.offset[0] as number));
      const built = withFault(metered.network, fault);
      const volts = await simulated(netlist(built), 1);
      const reference = metered.unitsPerVolt * (volts(metered.plus) - volts(metered.minus));
      if (Math.abs(shown - reference) <= 1e-6 * Math.abs(reference)) {
        agreed++;
        continue;
      }
      // The simulator adds 200 S and 1e-7 S into one sum and loses small drops between high leads; there
      // 60-digit arithmetic decides, down to a tenth of a nanovolt.
      const { between, highest } = exactVolts(built, metered.plus, metered.minus);
      const miss = Math.abs(shown / metered.unitsPerVolt - between);
      expect(miss).toBeLessThanOrEqual(1.5e-6 * Math.abs(between) + 4e-15 * highest + 1e-10);
    }
    expect(agreed).toBeGreaterThan(200);
  }, 60_000);
});
