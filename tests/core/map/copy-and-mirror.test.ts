import { describe, expect, test } from 'vitest';
import { mirrorThings } from '#core/map/commands/mirror-things.ts';
import { pasteThings } from '#core/map/commands/paste-things.ts';
import { copiedText, readCopied } from '#core/map/copied-text.ts';
import { copiedThings } from '#core/map/copied-things.ts';
import { mapText } from '#core/map/exchange.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import { mirrorMap } from '#core/map/mirror-map.ts';
import { otherSideName } from '#core/map/other-side-name.ts';
import type { MapNode, Panel, Segment } from '#core/map/records.ts';
import { segmentLine } from '#core/map/segment-line.ts';
import { sidesRenamed } from '#core/map/sides-renamed.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { edited } from '#tests/generated/edited.ts';
import { randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';
import { sampleMap } from '#tests/samples/read-sample.ts';

const copyOf = (map: MapDocument, ids: readonly string[]) => {
  const things = copiedThings(map, ids);
  if (!things.ok) throw new Error(things.problem.code);
  return things.value;
};

/** The records an edit added, as the map now has them. */
const addedTo = (before: MapDocument, after: MapDocument) => ({
  nodes: [...after.nodes.values()].filter((node) => !before.nodes.has(node.id)),
  segments: [...after.segments.values()].filter((segment) => !before.segments.has(segment.id)),
  panels: [...after.panels.values()].filter((panel) => !before.panels.has(panel.id)),
  circuits: [...after.circuits.values()].filter((circuit) => !before.circuits.has(circuit.id)),
});

const offset = { dxMm: 0, dyMm: 400 };
const pasted = (map: MapDocument, ids: readonly string[]): MapDocument =>
  edited(map, pasteThings(map, { things: copyOf(map, ids), ...offset }, seededChance(1)));

describe('copy and paste', () => {
  test('a run brings its end nodes, clips and tags, under ids of their own', () => {
    const after = pasted(sample.map, ['segment:front']);
    const { nodes, segments } = addedTo(sample.map, after);
    const [run] = segments as [Segment];
    expect(nodes.map((node) => node.at.yMm)).toEqual([400, 400]);
    expect(nodes.map((node) => node.id)).toContain(run.fromNodeId);
    expect(run.clips.map((clip) => clip.stationMm)).toEqual([100, 400]);
    const clipIds = [...after.segments.values()].flatMap((each) => each.clips.map((clip) => clip.id));
    expect(new Set(clipIds).size).toBe(clipIds.length);
    expect(segmentLine(after, run)?.lengthMm).toBe(500);
  });

  test('a pasted run is unchecked, and what hides it is a proposal unless the panel came too', () => {
    const alone = addedTo(sample.map, pasted(sample.map, ['segment:front'])).segments[0];
    expect(alone?.unchecked).toBe(true);
    expect(alone?.tags).toEqual([{ panelId: 'panel:tread', fromMm: 0, toMm: 500, confirmed: false }]);
    const after = pasted(sample.map, ['segment:front', 'panel:tread']);
    const { segments, panels } = addedTo(sample.map, after);
    expect(segments[0]?.tags).toEqual([{ panelId: panels[0]?.id, fromMm: 0, toMm: 500, confirmed: true }]);
  });

  test('a circuit keeps its trace only when all of its runs are copied', () => {
    const runs = ['segment:front', 'segment:middle', 'segment:rear'];
    const circuitId = sample.circuit.id;
    const whole = addedTo(sample.map, pasted(sample.map, [...runs, circuitId]));
    expect(whole.circuits[0]?.path.map((step) => step.segmentId).sort()).toEqual(
      whole.segments.map((segment) => segment.id).sort(),
    );
    const part = addedTo(sample.map, pasted(sample.map, [...runs.slice(1), circuitId]));
    expect(part.circuits[0]?.path).toEqual([]);
    expect(part.circuits[0]?.ends.map((end) => end.nodeId)).toContain(null);
  });

  test('crosses to another map as text and leaves behind what that map does not have', () => {
    const read = readCopied(copiedText(copyOf(sample.map, ['segment:front', 'panel:seat'])));
    const things = read.ok ? read.value : { records: [] };
    const other = emptyMap('map:other', 'Other', 'van', 'left');
    const after = edited(other, pasteThings(other, { things, dxMm: 0, dyMm: 0 }, seededChance(2)));
    expect([...after.segments.values()][0]?.tags).toEqual([]);
    expect([...after.panels.values()][0]?.offFirst).toEqual([]);
    expect(after.nodes.size).toBe(2);
  });

  test('a rub spot is copied without what was found at the original', () => {
    const spot = { ...sample.rubSpot, timesFound: 3 };
    const map = { ...sample.map, rubSpots: new Map([[spot.id, spot]]) };
    const after = pasted(map, [spot.id]);
    expect([...after.rubSpots.values()].map((each) => each.timesFound)).toEqual([3, 0]);
  });
});

describe('mirroring picked things', () => {
  const shifted: MapDocument = edited(
    sample.map,
    pasteThings(sample.map, { things: copyOf(sample.map, ['segment:rear']), ...offset }, seededChance(3)),
  );
  const [side] = addedTo(sample.map, shifted).segments as [Segment];

  test('a copy lies as far on the other side of the centre line, unchecked, with sides changed over', () => {
    const named = {
      ...shifted,
      segments: new Map(shifted.segments).set(side.id, { ...side, name: 'Left sill' }),
    };
    const after = edited(named, mirrorThings(named, { ids: [side.id], how: 'copy' }, seededChance(4)));
    const { segments, nodes } = addedTo(named, after);
    expect(segments).toMatchObject([{ name: 'Right sill', unchecked: true }]);
    expect(nodes.map((node) => node.at.yMm)).toEqual([-400, -400]);
    expect(after.segments.get(side.id)).toEqual(named.segments.get(side.id));
  });

  test('a node on the centre line is shared by both sides', () => {
    const west = sample.map.nodes.get('node:west') as MapNode;
    const far: MapNode = { ...west, id: 'node:side', at: { xMm: 0, yMm: 300, zMm: 0 } };
    const run: Segment = { ...sample.rear, id: 'segment:side', fromNodeId: west.id, toNodeId: far.id };
    const map = {
      ...sample.map,
      nodes: new Map(sample.map.nodes).set(far.id, far),
      segments: new Map(sample.map.segments).set(run.id, run),
    };
    const after = edited(map, mirrorThings(map, { ids: [run.id], how: 'copy' }, seededChance(5)));
    const { segments, nodes } = addedTo(map, after);
    expect(nodes).toHaveLength(1);
    expect(segments[0]?.fromNodeId).toBe(west.id);
  });

  test('only a panel that reaches over the centre line goes on hiding the copy', () => {
    const area = (fromMm: number, toMm: number): Panel['area'] => [
      { xMm: 0, yMm: fromMm },
      { xMm: 900, yMm: fromMm },
      { xMm: 900, yMm: toMm },
    ];
    const panels = new Map(shifted.panels)
      .set('panel:tread', { ...sample.tread, area: area(300, 500) })
      .set('panel:seat', { ...sample.seat, area: area(-500, 500) });
    const tags = ['panel:tread', 'panel:seat'].map((panelId) => ({
      panelId: panelId as Panel['id'],
      fromMm: 0,
      toMm: 100,
      confirmed: true,
    }));
    const map = { ...shifted, panels, segments: new Map(shifted.segments).set(side.id, { ...side, tags }) };
    const after = edited(map, mirrorThings(map, { ids: [side.id], how: 'copy' }, seededChance(6)));
    expect(addedTo(map, after).segments[0]?.tags).toEqual([
      { panelId: 'panel:seat', fromMm: 0, toMm: 100, confirmed: false },
    ]);
  });

  test('a mirrored panel waits for the one of the same name on the other side, and its runs are proposed to it', () => {
    const area = (sign: number): Panel['area'] =>
      [200, 300, 400].map((yMm, i) => ({ xMm: 100 * i, yMm: sign * yMm }));
    const left: Panel = { ...sample.tread, id: 'panel:left', name: 'Left tread', area: area(-1) };
    const right: Panel = { ...left, id: 'panel:right', name: 'Right tread', area: area(1) };
    const trim: Panel = { ...left, id: 'panel:trim', name: 'Left trim', offFirst: [left.id] };
    const tags = [{ panelId: left.id, fromMm: 0, toMm: 100, confirmed: true }];
    const map = {
      ...shifted,
      panels: new Map([left, right, trim].map((panel) => [panel.id, panel])),
      segments: new Map(shifted.segments).set(side.id, { ...side, tags }),
    };
    const after = edited(map, mirrorThings(map, { ids: [trim.id, side.id], how: 'copy' }, seededChance(7)));
    const added = addedTo(map, after);
    expect([...after.panels.values()].find(({ name }) => name === 'Right trim')?.offFirst).toEqual([
      right.id,
    ]);
    expect(added.segments[0]?.tags).toEqual([{ ...tags[0], panelId: right.id, confirmed: false }]);
  });

  test('turned twice, everything lies where it was', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const map = randomMap(seed);
      const ids = [
        ...map.segments.keys(),
        ...map.panels.keys(),
        ...map.outlines.keys(),
        ...map.rubSpots.keys(),
      ];
      const turn = (each: MapDocument): MapDocument =>
        edited(each, mirrorThings(each, { ids, how: 'turn' }, seededChance(seed)));
      const once = turn(map);
      for (const segment of once.segments.values()) {
        const line = segmentLine(once, segment);
        const before = segmentLine(map, map.segments.get(segment.id) as Segment);
        expect(line?.lengthMm).toBeCloseTo(before?.lengthMm ?? -1, 6);
      }
      const twice = turn(once);
      const allUnchecked = new Map(
        [...map.segments].map(([id, segment]) => [id, { ...segment, unchecked: true }]),
      );
      expect(roundedText(twice)).toBe(roundedText({ ...map, segments: allUnchecked }));
    }
  });

  test('in a map for the other side of drive everything is called by the side it lies on', () => {
    const map = sampleMap('orlune-pivet');
    const ids = [map.outlines, map.nodes, map.segments, map.panels, map.rubSpots].flatMap((table) => [
      ...table.keys(),
    ]);
    const other = sidesRenamed(mirrorMap(map, { id: 'map:other', ticked: ids }).map, ids);
    const sided = (each: MapDocument): readonly number[] =>
      [...each.nodes.values()].flatMap(({ name, at }) =>
        /\bleft\b/i.test(name) ? [at.yMm] : /\bright\b/i.test(name) ? [-at.yMm] : [],
      );
    expect(sided(map).length).toBeGreaterThan(8);
    expect(sided(other).filter((yMm) => yMm > 0)).toEqual(sided(map).filter((yMm) => yMm > 0));
    expect([...other.panels.values()].map(({ name }) => name)).toContain('Right hinge gaiter');
    expect([...other.circuits.values()].map(({ name }) => name)).toContain('Right tail lamp');
    const some = sidesRenamed(map, ['panel:left-kick-trim']);
    expect(some.panels.get('panel:left-kick-trim')?.name).toBe('Right kick trim');
    expect(some.nodes).toEqual(map.nodes);
    expect(some.circuits).toEqual(map.circuits);
  });

  test('names change sides by whole words, in their own letters', () => {
    expect(otherSideName('LEFT rear, leftover, rh lamp')).toBe('RIGHT rear, leftover, lh lamp');
  });
});

/** A map's text with its figures to a thousandth of a millimetre. */
function roundedText(map: MapDocument): string {
  return mapText(map).replaceAll(/-?\d+\.\d+/g, (figure) =>
    String(Math.round(Number(figure) * 1_000) / 1_000 + 0),
  );
}
