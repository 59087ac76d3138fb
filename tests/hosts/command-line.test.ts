import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Job } from '#core/job/job-document.ts';
import { type MapExchange, mapToExchange } from '#core/map/exchange.ts';
import { sample } from '#tests/sample.ts';

const root = join(import.meta.dirname, '../..');
const program = join(root, 'electron/command-line/dig.ts');
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'undertrim-dig-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function dig(...args: string[]): Promise<Run> {
  return new Promise((resolve) => {
    execFile(process.execPath, [program, ...args], { cwd: root }, (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : error ? 1 : 0, out, err });
    });
  });
}

let written = 0;
function file(content: object | string): string {
  written += 1;
  const path = join(folder, `document-${written}.json`);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

const goodMap = mapToExchange(sample.map);
const goodJob = sample.job;
const mapWith = (changes: (map: MapExchange) => Partial<MapExchange>): MapExchange => ({
  ...goodMap,
  ...changes(goodMap),
});
const digMap = (map: object | string, job: object | string = goodJob) => dig(file(map), file(job));

const run = (map: MapExchange, id: string, changes: object) => ({
  segments: map.segments.map((segment) => (segment.id === id ? { ...segment, ...changes } : segment)),
});

/** A refusal: exit code 1, nothing on standard output, and a message with these words in it. */
async function refused(running: Promise<Run>, ...words: string[]): Promise<void> {
  const { code, out, err } = await running;
  expect(code).toBe(1);
  expect(out).toBe('');
  for (const word of words) expect(err).toContain(word);
  expect(err).not.toContain('    at ');
  expect(err.trim().split('\n').length).toBeGreaterThanOrEqual(3);
}

describe('the ranking as data', () => {
  test('has the stable field names, and the chances sum to one', async () => {
    const { code, out } = await dig(file(goodMap), file(goodJob), '--json');
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    expect(answer.circuit.lengthMm).toBe(1500);
    const { classes, stretches, medianStationMm, credible80Mm } = answer.posterior;
    const chance = (list: { probability: number }[]) => list.reduce((sum, each) => sum + each.probability, 0);
    expect(chance(stretches) + classes.component + classes['none-of-these']).toBeCloseTo(1, 9);
    expect(Object.values<number>(classes).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    expect(Object.keys(stretches[0])).toEqual(['segmentId', 'fromMm', 'toMm', 'probability']);
    expect(stretches[0].fromMm).toBe(0);
    expect(stretches.at(-1).toMm).toBe(1500);
    expect(medianStationMm).toBeGreaterThan(0);
    expect(credible80Mm).toBeLessThan(1500);
    const [first] = answer.digPlan;
    expect(Object.keys(first)).toEqual([
      'rank',
      'takeOff',
      'minutes',
      'look',
      'probability',
      'runningMinutes',
      'runningProbability',
      'reason',
    ]);
    expect(Object.keys(first.look)).toEqual(['segmentIds', 'fromMm', 'toMm']);
    expect(first.reason).toMatch(/^([A-Z]|\d+ % ).*\.$/);
    expect(answer.expectedMinutes).toBeGreaterThan(0);
    expect(answer.nextTests).toEqual([]);
    expect(answer.readings).toEqual([]);
    expect(answer.contradictions).toEqual([]);
    expect(answer.warnings.map((warning: { code: string }) => warning.code)).toContain('no-scale');
  });

  test('gives the same text for the same documents every time', async () => {
    const [map, job] = [file(goodMap), file(goodJob)];
    const [one, two] = await Promise.all([dig(map, job, '--json'), dig(map, job, '--json')]);
    expect(one.out).toBe(two.out);
  });
});

describe('the ranking as text', () => {
  test('names what to take off, where to look, the chance, and the care an airbag seat needs', async () => {
    const { code, out } = await digMap(goodMap);
    expect(code).toBe(0);
    expect(out).toContain('Where to open first');
    expect(out).toMatch(/Take off first: (?:Tread plate, then )?Front seat/);
    expect(out).toContain('Sill plug');
    expect(out).toMatch(/chance \d+ %/);
    expect(out).toMatch(/Airbag: Ignition off, battery off/);
    expect(out).not.toContain('undefined');
    expect(out).not.toContain('NaN');
  });

  test('says which test pays as a plain instruction, and what each outcome means', async () => {
    const mapFile = join(root, 'sample-vehicles/brannock-scarp.map.json');
    const text = readFileSync(join(root, 'sample-vehicles/brannock-scarp.job.json'), 'utf8');
    const jobFile = file({ ...JSON.parse(text), entries: [] });
    const [plain, data] = await Promise.all([dig(mapFile, jobFile), dig(mapFile, jobFile, '--json')]);
    const words = plain.out.replaceAll(/\s+/g, ' ');
    expect(words).toContain('Tests that pay before anything more comes off');
    expect(words).toMatch(/Saves about \d+ min of searching beyond the \d+ min it takes/);
    expect(words).toMatch(/\(\d+ %\): (begin with|look at)/);
    const { nextTests } = JSON.parse(data.out);
    expect(nextTests.length).toBeGreaterThan(0);
    for (const each of nextTests) {
      expect(each.instruction).toMatch(/^([A-Z]|\d+ % ).*\.$/);
      expect(each.minutesSaved).toBeGreaterThan(0);
    }
  });

  test('says what each reading did', async () => {
    const { out } = await dig(
      join(root, 'sample-vehicles/varnholt-aldine.map.json'),
      join(root, 'sample-vehicles/varnholt-aldine.job.json'),
    );
    const words = out.replaceAll(/\s+/g, ' ');
    expect(words).toMatch(
      /Reading 1, Ohms: alone it says nothing about the place\. Beside the rest it told \d\.\d+ bit/,
    );
  });

  test('an airbag circuit is for looking only', async () => {
    const restraint = mapWith((map) => ({
      circuits: map.circuits.map((circuit) => ({ ...circuit, duty: 'restraint' })),
    }));
    const { out } = await digMap(restraint);
    const words = out.replaceAll(/\s+/g, ' ');
    expect(words).toContain('Look only. No meter, no beeper, no lamp, no current');
    expect(words).not.toContain('Tests that pay');
    expect(words.indexOf('Look only.')).toBeLessThan(words.indexOf('Where to open first'));
  });

  test('the sample vehicle: with its readings, the first opening is where the wire is bare', async () => {
    const { code, out } = await dig(
      join(root, 'sample-vehicles/orlune-pivet.map.json'),
      join(root, 'sample-vehicles/orlune-pivet.job.json'),
      '--json',
    );
    expect(code).toBe(0);
    const [first] = JSON.parse(out).digPlan;
    expect(first.look.fromMm).toBeLessThan(3900);
    expect(first.look.toMm).toBeGreaterThan(3900);
  });
});

describe('bad input ends with code 1 and says what to do', () => {
  test('too few documents, an unknown option', async () => {
    await refused(dig(file(goodMap)), 'Two documents are needed');
    await refused(dig(file(goodMap), file(goodJob), '--fast'), '--fast', 'npm run dig');
  });

  test('a missing file', async () => {
    const gone = join(folder, 'gone.json');
    await refused(dig(gone, file(goodJob)), gone, 'there is no such file');
    await refused(dig(file(goodMap), gone), gone, 'there is no such file');
  });

  test('not JSON', async () => {
    await refused(digMap('{"format": '), 'not a JSON document');
    await refused(digMap(goodMap, 'hello'), 'not a JSON document');
  });

  test('the wrong document, in either place', async () => {
    await refused(digMap(goodJob, goodMap), 'undertrim.map', 'undertrim.job', 'format');
    await refused(digMap(goodMap, { some: 'thing' }), 'undertrim.job');
    await refused(digMap(goodMap, []), 'undertrim.job');
  });

  test('a newer version', async () => {
    await refused(digMap({ ...goodMap, version: 99 }), 'version', '99');
    await refused(digMap(goodMap, { ...goodJob, version: 99 }), 'version', '99');
  });

  test('a field that is not as it should be, by its path', async () => {
    const map = mapWith((each) => run(each, 'segment:front', { covering: 'gold' }));
    await refused(digMap(map), 'segments[0].covering');
    const job: unknown = { ...goodJob, vehicle: { ...goodJob.vehicle, odometer: -4 } };
    await refused(digMap(goodMap, job as Job), 'vehicle.odometer');
  });

  test('a run to a node that is not there', async () => {
    const map = mapWith((each) => run(each, 'segment:rear', { toNodeId: 'node:gone' }));
    await refused(digMap(map), 'segment:rear', 'toNodeId', 'node:gone');
  });

  test('panels that wait for one another', async () => {
    const map = mapWith((each) => ({
      panels: each.panels.map((panel) =>
        panel.id === 'panel:tread' ? { ...panel, offFirst: ['panel:seat'] } : panel,
      ),
    }));
    await refused(digMap(map), 'ring', 'Tread plate', 'Front seat', 'offFirst');
  });

  test('a clip beyond the end of its run', async () => {
    const map = mapWith((each) =>
      run(each, 'segment:front', {
        clips: [{ id: 'clip:far', stationMm: 900, kind: 'clip', missing: false }],
      }),
    );
    await refused(digMap(map), 'segment:front', 'clips[0].stationMm', '900 mm', '500 mm');
  });

  test('a run without length', async () => {
    const map = mapWith((each) => ({
      nodes: each.nodes.map((node) =>
        node.id === 'node:far' ? { ...node, at: { xMm: 1000, yMm: 0, zMm: 0 } } : node,
      ),
    }));
    await refused(digMap(map), 'segment:rear', 'no length');
  });

  test('a circuit that is not connected', async () => {
    const map = mapWith((each) => ({
      circuits: each.circuits.map((circuit) => ({
        ...circuit,
        path: circuit.path.filter((step) => step.segmentId !== 'segment:middle'),
      })),
    }));
    await refused(digMap(map), 'Seat switch', 'not connected', 'segment:rear', 'path');
  });

  test('a job of another map, without a circuit, or that names what the map does not have', async () => {
    await refused(digMap(goodMap, { ...goodJob, mapId: 'map:other' }), 'mapId', 'map:other');
    await refused(digMap(goodMap, { ...goodJob, circuitId: null }), 'circuitId');
    const entry = { id: 'entry:1', at: goodJob.openedAt, type: 'panel-off', panelId: 'panel:gone' };
    await refused(digMap(goodMap, { ...goodJob, entries: [entry] }), 'entry:1', 'panelId', 'panel:gone');
  });
});
