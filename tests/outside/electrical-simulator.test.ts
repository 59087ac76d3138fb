import { Simulation } from 'eecircuit-engine';
import { beforeAll, describe, expect, test } from 'vitest';
import { faultResponse, isSeriesClass } from '#core/circuit/fault-response.ts';
import { floatingIslands } from '#core/circuit/network-islands.ts';
import { solveNetwork } from '#core/circuit/solve-network.ts';
import { exactVolts } from '#tests/core/circuit/exact-volts.ts';
import { netlist, withFault } from '#tests/core/circuit/explicit-fault.ts';
import { branchedCases, type GeneratedCase, generatedCases } from '#tests/core/circuit/generated-readings.ts';

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
  test.each<[string, readonly GeneratedCase[], number]>([
    ['100 generated straight circuits', generatedCases(200, 41), 100],
    ['200 generated circuits with branches', branchedCases(400, 43), 200],
  ])(
    'every node of over %s with faults agrees to a millionth',
    async (_, cases, least) => {
      let compared = 0;
      for (const { metered, fault } of cases) {
        const network = withFault(metered.network, fault);
        if (floatingIslands(network).length > 0) continue;
        const answer = solveNetwork(network);
        if (answer.outcome !== 'solved') throw new Error(answer.outcome);
        const volts = await simulated(netlist(network), 1);
        const largest = Math.max(...answer.volts.map(Math.abs));
        const allowed = (value: number): number => 1e-6 * Math.abs(value) + 1e-10 * largest + 1e-11;
        const missed = Array.from({ length: network.nodeCount }, (_each, i) => i + 1).filter(
          (node) => Math.abs((answer.volts[node] as number) - volts(node)) > allowed(volts(node)),
        );
        if (missed.length === 0) compared++;
        // Where the simulator itself loses digits, 60-digit arithmetic decides.
        for (const node of missed.slice(0, 2)) {
          const { between } = exactVolts(network, node, 0);
          expect(Math.abs((answer.volts[node] as number) - between)).toBeLessThanOrEqual(allowed(between));
        }
      }
      expect(compared).toBeGreaterThan(least);
    },
    120_000,
  );

  test.each([
    ['on straight circuits', generatedCases(300, 97)],
    ['on circuits with branches, on the branches too', branchedCases(300, 98)],
  ])(
    'what the meter would show for 300 generated faults %s agrees to a millionth',
    async (_, cases) => {
      let agreed = 0;
      for (const { metered, fault } of cases) {
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
        // 60-digit arithmetic decides, down to a fifth of a nanovolt: with 1e7 ohm about, sixteen digits of 12 V
        // leave no more (held on 2,000 more circuits of either sort; a meter shows 1e-4 V).
        const { between, highest } = exactVolts(built, metered.plus, metered.minus);
        const miss = Math.abs(shown / metered.unitsPerVolt - between);
        expect(miss).toBeLessThanOrEqual(1.5e-6 * Math.abs(between) + 4e-15 * highest + 2e-10);
      }
      expect(agreed).toBeGreaterThan(200);
    },
    120_000,
  );
});
