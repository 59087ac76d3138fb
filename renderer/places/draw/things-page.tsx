import { spotParts } from '#core/chafe/run-causes.ts';
import { addCircuit } from '#core/map/commands/add-circuit.ts';
import { compareText } from '#core/quantity/compare-text.ts';
import { newId } from '#core/quantity/id.ts';
import { runLine } from '../../board/run-line.ts';
import { drawWords } from '../../language/draw.ts';
import { pictureWords } from '../../language/draw-first.ts';
import { hazardWords } from '../../language/hazard.ts';
import { nameOf } from '../../language/name-of.ts';
import { sayDrawnLength } from '../../language/say-drawn-length.ts';
import { nodeKindWords, panelKindWords, rubSpotKindWords } from '../../language/words.ts';
import { Button } from '../../parts/index.ts';
import { freeName, nextOrder } from '../../tools/free-name.ts';
import { BringPicture } from './bring-picture.tsx';
import { ByFigures } from './by-figures/by-figures.tsx';
import { useDraw } from './draw-context.ts';
import { mapHazards } from './hazard/map-hazards.ts';
import { LayerSwitches } from './layer-switches.tsx';

interface Line {
  readonly id: string;
  readonly name: string;
  readonly fact: string;
}

/** Everything on the map as lists: the same picking and the same details without a pointer. */
export function ThingsPage() {
  const { map, lengths, make } = useDraw();
  const runs = [...map.segments.values()].map((segment) => {
    const said = sayDrawnLength(runLine(map, segment)?.lengthMm ?? 0, lengths);
    const ends = `${nameOf(map, segment.fromNodeId)} – ${nameOf(map, segment.toNodeId)}`;
    return {
      id: segment.id,
      name: segment.name || `${segment.routeName}: ${ends}`,
      fact: `${said.text} ${said.unit.split(' ')[0]}`,
    };
  });
  const nodes = [...map.nodes.values()].map((node) => ({
    id: node.id,
    name: node.name || nodeKindWords[node.kind],
    fact: node.name ? nodeKindWords[node.kind] : '',
  }));
  const panels = [...map.panels.values()].map((panel) => ({
    id: panel.id,
    name: panel.name || panelKindWords[panel.kind],
    fact: `${panel.minutesOff} + ${panel.minutesOn} ${drawWords.units.minutes}`,
  }));
  const parts = spotParts(map, mapHazards(map));
  const spots = [...map.rubSpots.values()].map((spot) => ({
    id: spot.id,
    name: spot.name || rubSpotKindWords[spot.kind],
    fact: hazardWords.spot.inList(parts.get(spot.id)?.ofMap ?? 0),
  }));
  const circuits = [...map.circuits.values()].map((circuit) => ({
    id: circuit.id,
    name: circuit.name,
    fact: circuit.wireColours.join('/'),
  }));
  const pictures = [...map.underlays.values()].map(({ id, name, hidden }) => ({
    id,
    name: name || drawWords.tools.underlay,
    fact: hidden ? pictureWords.hidden : '',
  }));
  const outlines = [...map.outlines.values()].map(({ id, name }) => ({ id, name, fact: '' }));
  const addEmptyCircuit = (): void => {
    const id = newId('circuit', Math.random);
    const nowhere = { nodeId: null, kind: 'other' as const };
    const circuit = {
      id,
      name: freeName(drawWords.records.circuit, map.circuits.values()),
      wireColours: [],
      conductorMm2: 0.5,
      insulation: 'thin-wall' as const,
      duty: 'ordinary' as const,
      fuseA: null,
      path: [],
      pins: [],
      ends: [nowhere, nowhere] as [typeof nowhere, typeof nowhere],
      note: '',
      order: nextOrder(map.circuits.values()),
    };
    make(addCircuit(map, { circuit }), { label: 'edit.addCircuit', select: [id] });
  };
  return (
    <div className="things">
      <ByFigures />
      <LayerSwitches />
      <Things label={drawWords.lists.runs} lines={runs} />
      <Things label={drawWords.lists.circuits} lines={circuits} />
      <Button onClick={addEmptyCircuit}>{drawWords.lists.newCircuit}</Button>
      <Things label={drawWords.lists.panels} lines={panels} />
      <Things label={drawWords.lists.rubSpots} lines={spots} />
      <Things label={drawWords.lists.nodes} lines={nodes} />
      <Things label={drawWords.lists.outlines} lines={outlines} />
      <Things label={pictureWords.list} lines={pictures} none={pictureWords.none} />
      <BringPicture />
    </div>
  );
}

function Things({
  label,
  lines,
  none = drawWords.lists.none,
}: {
  readonly label: string;
  readonly lines: readonly Line[];
  readonly none?: string;
}) {
  const { open, goTo } = useDraw();
  const sorted = [...lines].sort((a, b) => compareText(a.name, b.name) || compareText(a.id, b.id));
  return (
    <section aria-label={label}>
      <h2>
        {label} <span className="quiet">{lines.length}</span>
      </h2>
      {lines.length === 0 ? <p className="quiet">{none}</p> : null}
      <ul className="list">
        {sorted.map((line) => (
          <li key={line.id} className="list-item">
            <button
              type="button"
              className="thing"
              aria-pressed={open.selection.includes(line.id)}
              onClick={() => goTo([line.id])}
            >
              <span>{line.name}</span>
              <span className="quiet">{line.fact}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
