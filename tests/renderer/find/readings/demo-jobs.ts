import { type CircuitLine, layStraight } from '#core/circuit/circuit-line.ts';
import type { Job } from '#core/job/job-document.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { assert } from '#core/quantity/assert.ts';
import { sampleJob, sampleMap, sampleNames } from '#tests/samples/read-sample.ts';

/** The jobs that come with the program, each on its map with its circuit laid straight. */
export function demoJobs(): readonly {
  readonly name: string;
  readonly job: Job;
  readonly map: MapDocument;
  readonly line: CircuitLine;
}[] {
  return sampleNames.map((name) => {
    const map = sampleMap(name);
    const job = sampleJob(name);
    const circuit = job.circuitId === null ? undefined : map.circuits.get(job.circuitId);
    assert(circuit, 'a sample job has its circuit');
    const laid = layStraight(map, circuit);
    assert(laid.ok, 'the circuit of a sample job lies straight');
    return { name, job, map, line: laid.value };
  });
}
