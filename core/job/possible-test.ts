import type { CircuitState } from '../circuit/car-state.ts';
import type { CircuitLine } from '../circuit/circuit-line.ts';
import type { InjectionPlan } from '../circuit/safe-injection.ts';
import type { Hypotheses } from '../locate/hypotheses.ts';
import type { OutcomeChances } from '../locate/outcome-chances.ts';
import type { StationRange } from '../locate/station-ranges.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { CircuitId, NodeId, PanelId } from '../quantity/id.ts';
import type { JobEntry } from './job-document.ts';
import type { ExpectedFigure, NextTest, NextTestKind, OutcomeLabel } from './next-test.ts';
import type { PathStretch } from './path-stretches.ts';

/** A test that can be done, and how likely each way it may come out is under each hypothesis. */
export interface PossibleTest {
  readonly kind: NextTestKind;
  readonly nodeIds: readonly NodeId[];
  readonly sides: NextTest['sides'];
  readonly towardsId: NodeId | null;
  readonly other: NextTest['other'];
  readonly ranges: readonly StationRange[];
  readonly state: CircuitState;
  /** Panels that hide the places it needs. */
  readonly panelIds: readonly PanelId[];
  /** Inline plugs to part for it besides what its kind always takes. */
  readonly plugsParted: number;
  readonly labels: readonly OutcomeLabel[];
  readonly chances: OutcomeChances;
  readonly injection: InjectionPlan | null;
  readonly expected: ExpectedFigure | null;
}

/** What possible tests depend on. */
export interface TestGrounds {
  readonly map: MapDocument;
  readonly line: CircuitLine;
  readonly cells: Hypotheses;
  /** Probability per cell on the wire, classes together. */
  readonly cellProbability: Float64Array;
  readonly stretches: readonly PathStretch[];
  /** Standing entries: what was done already is not offered again. */
  readonly entries: readonly JobEntry[];
  readonly medianMm: number;
  /** Panels that are off; as the entries say when absent. */
  readonly off?: ReadonlySet<PanelId> | undefined;
  /** Probability of every hypothesis on the cells; without it no other wire is asked of. */
  readonly probability?: Float64Array | undefined;
  /** Circuits that fail with the searched one, and that work. */
  readonly alsoFailing?: readonly CircuitId[] | undefined;
  readonly working?: readonly CircuitId[] | undefined;
}
