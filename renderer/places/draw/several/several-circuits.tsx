import { changeCircuit } from '#core/map/commands/change-circuit.ts';
import { circuitDutySchema, insulationClasses } from '#core/map/kinds.ts';
import type { Circuit } from '#core/map/records.ts';
import { drawWords } from '../../../language/draw.ts';
import { circuitDutyWords, insulationClassWords } from '../../../language/words.ts';
import { optionsOf } from '../options-of.ts';
import { SharedFigure, SharedNote, SharedSelect } from './shared-fields.tsx';
import { useChangeEach } from './use-change-each.ts';

/** What several circuits have in common. */
export function SeveralCircuits({ circuits }: { readonly circuits: readonly Circuit[] }) {
  const change = useChangeEach(circuits, (map, { id }, changes) =>
    changeCircuit(map, { circuitId: id, changes }),
  );
  return (
    <>
      <div className="form-row">
        <SharedFigure
          label={drawWords.fields.conductor}
          values={circuits.map((circuit) => circuit.conductorMm2)}
          unit={drawWords.units.mm2}
          min={0.05}
          max={120}
          places={2}
          onChange={(conductorMm2) => {
            if (conductorMm2 !== null) change({ conductorMm2 }, 'conductorMm2');
          }}
        />
        <SharedFigure
          label={drawWords.fields.fuse}
          values={circuits.map((circuit) => circuit.fuseA)}
          unit={drawWords.units.amps}
          min={0.1}
          max={500}
          mayBeEmpty
          onChange={(fuseA) => change({ fuseA }, 'fuseA')}
        />
      </div>
      <SharedSelect
        label={drawWords.fields.insulation}
        values={circuits.map((circuit) => circuit.insulation)}
        options={optionsOf(insulationClasses, insulationClassWords)}
        onChange={(insulation) => change({ insulation })}
      />
      <SharedSelect
        label={drawWords.fields.duty}
        values={circuits.map((circuit) => circuit.duty)}
        options={optionsOf(circuitDutySchema.options, circuitDutyWords)}
        onChange={(duty) => change({ duty })}
      />
      <SharedNote
        values={circuits.map((circuit) => circuit.note)}
        onChange={(note) => change({ note }, 'note')}
      />
    </>
  );
}
