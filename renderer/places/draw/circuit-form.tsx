import { useState } from 'react';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { changeCircuit } from '#core/map/commands/change-circuit.ts';
import { traceCircuit } from '#core/map/commands/trace-circuit.ts';
import { circuitDutySchema, circuitEndKinds, insulationClasses } from '#core/map/kinds.ts';
import type { Circuit } from '#core/map/records.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { sayDrawnLength } from '../../language/say-drawn-length.ts';
import { circuitDutyWords, circuitEndKindWords, insulationClassWords } from '../../language/words.ts';
import { Field, Figure, Select, TextArea } from '../../parts/index.ts';
import { CircuitPins } from './circuit-pins.tsx';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';
import { NameField } from './name-field.tsx';
import { optionsOf } from './options-of.ts';
import { RouteChoice } from './route-choice/route-choice.tsx';

/** A circuit: its wire, what sits at its ends, and the way it takes. */
export function CircuitForm({ circuit }: { readonly circuit: Circuit }) {
  const { map, make, lengths } = useDraw();
  const circuitId = circuit.id;
  const change = (changes: Partial<Omit<Circuit, 'id'>>, joinKey?: string): void => {
    make(changeCircuit(map, { circuitId, changes }), {
      label: 'edit.changeCircuit',
      ...(joinKey ? { joinKey: `${circuitId}.${joinKey}` } : {}),
    });
  };
  const laid = layStraight(map, circuit);
  const length = laid.ok ? sayDrawnLength(laid.value.lengthMm, lengths) : null;
  return (
    <section className="form" aria-label={circuit.name}>
      <h2>{circuit.name}</h2>
      {length ? (
        <p>
          {drawWords.fields.traced} <Figure value={length.text} unit={length.unit} />
        </p>
      ) : (
        <p className="quiet">{drawWords.fields.untraced}</p>
      )}
      <NameField value={circuit.name} onChange={(name) => change({ name }, 'name')} />
      <ColoursField
        colours={circuit.wireColours}
        onChange={(wireColours) => change({ wireColours }, 'colours')}
      />
      <div className="form-row">
        <FigureField
          label={drawWords.fields.conductor}
          value={circuit.conductorMm2}
          unit={drawWords.units.mm2}
          min={0.05}
          max={120}
          places={2}
          onChange={(conductorMm2) => {
            if (conductorMm2 !== null) change({ conductorMm2 }, 'conductorMm2');
          }}
        />
        <FigureField
          label={drawWords.fields.fuse}
          value={circuit.fuseA}
          unit={drawWords.units.amps}
          min={0.1}
          max={500}
          mayBeEmpty
          onChange={(fuseA) => change({ fuseA }, 'fuseA')}
        />
      </div>
      <Select
        label={drawWords.fields.insulation}
        value={circuit.insulation}
        options={optionsOf(insulationClasses, insulationClassWords)}
        onChange={(insulation) => change({ insulation })}
      />
      <Select
        label={drawWords.fields.duty}
        value={circuit.duty}
        options={optionsOf(circuitDutySchema.options, circuitDutyWords)}
        onChange={(duty) => change({ duty })}
      />
      <CircuitEnds circuit={circuit} change={change} />
      <RouteChoice circuit={circuit} />
      <CircuitPins circuit={circuit} change={change} />
      <TextArea
        label={drawWords.fields.note}
        value={circuit.note}
        maxLength={4_000}
        onChange={(note) => change({ note }, 'note')}
      />
    </section>
  );
}

function CircuitEnds({
  circuit,
  change,
}: {
  readonly circuit: Circuit;
  readonly change: (changes: Partial<Omit<Circuit, 'id'>>) => void;
}) {
  const { map, make } = useDraw();
  const [first, second] = circuit.ends;
  const nodes = [...map.nodes.values()].filter((node) => node.kind !== 'branch' || node.name !== '');
  const nodeOptions = [
    { value: '', label: drawWords.fields.endOpen },
    ...nodes
      .map((node) => ({ value: node.id as string, label: nameOf(map, node.id) }))
      .sort((a, b) => a.label.localeCompare(b.label, 'en')),
  ];
  /** With both ends known the way is traced anew; with one, only that end is noted. */
  const setNode = (index: 0 | 1, value: string): void => {
    const nodeId = value === '' ? null : (value as NodeId);
    const ends: Circuit['ends'] =
      index === 0 ? [{ ...first, nodeId }, second] : [first, { ...second, nodeId }];
    const [from, to] = ends;
    if (from.nodeId === null || to.nodeId === null) {
      change({ ends, path: [] });
      return;
    }
    make(traceCircuit(map, { circuitId: circuit.id, fromNodeId: from.nodeId, toNodeId: to.nodeId }), {
      label: 'edit.addCircuit',
    });
  };
  return (
    <>
      {([0, 1] as const).map((index) => (
        <div className="form-row" key={index}>
          <Select
            label={index === 0 ? drawWords.fields.firstEnd : drawWords.fields.secondEnd}
            value={circuit.ends[index].nodeId ?? ''}
            options={nodeOptions}
            onChange={(value) => setNode(index, value)}
          />
          <Select
            label={drawWords.fields.kind}
            value={circuit.ends[index].kind}
            options={optionsOf(circuitEndKinds, circuitEndKindWords)}
            onChange={(kind) =>
              change({ ends: index === 0 ? [{ ...first, kind }, second] : [first, { ...second, kind }] })
            }
          />
        </div>
      ))}
    </>
  );
}

/** Colours as one line of words; spaces and commas stay as typed until the words change. */
function ColoursField({
  colours,
  onChange,
}: {
  readonly colours: readonly string[];
  readonly onChange: (colours: string[]) => void;
}) {
  const [text, setText] = useState(colours.join(', '));
  const read = (typed: string): string[] =>
    typed
      .split(',')
      .map((word) => word.trim())
      .filter((word) => word !== '');
  const same = read(text).join() === colours.join();
  const words = read(text);
  const tooMany = words.length > 3;
  return (
    <Field
      label={drawWords.fields.colours}
      value={same || tooMany ? text : colours.join(', ')}
      maxLength={90}
      {...(tooMany ? { trouble: drawWords.fields.coloursHint } : { hint: drawWords.fields.coloursHint })}
      onChange={(typed) => {
        setText(typed);
        const next = read(typed);
        if (next.length <= 3 && next.join() !== colours.join()) onChange(next);
      }}
    />
  );
}
