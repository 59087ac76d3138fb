import { type FaultClass, faultClasses } from '../map/kinds.ts';
import { isSeriesClass } from './fault-response.ts';

/** How strong a fault of one class may be: its resistance in ohm and how likely each is before any reading. */
export interface FaultStrength {
  readonly leastOhms: number;
  readonly mostOhms: number;
  /** Probability density over ln(ohms); integrates to one over the range. */
  readonly density: (lnOhms: number) => number;
}

const evenInLog = (leastOhms: number, mostOhms: number): FaultStrength => {
  const density = 1 / Math.log(mostOhms / leastOhms);
  return { leastOhms, mostOhms, density: () => density };
};

const normal = (value: number, mean: number, spread: number): number =>
  Math.exp(-0.5 * ((value - mean) / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI));

/**
 * Resistance of each kind of fault before any reading: all judgement. Short to ground is half metal on
 * metal (median 0.2 ohm), half a rubbed or wet touch (median 30 ohm).
 */
export const faultStrengths: Readonly<Record<FaultClass, FaultStrength>> = {
  'short-to-ground': {
    leastOhms: 1e-3,
    mostOhms: 1e5,
    density: (ln) => 0.5 * normal(ln, Math.log(0.2), 1.5) + 0.5 * normal(ln, Math.log(30), 2),
  },
  'short-to-supply': evenInLog(0.01, 1e4),
  'wire-to-wire': evenInLog(0.01, 1e4),
  open: evenInLog(1e6, 1e8),
  'high-resistance': evenInLog(0.2, 1e5),
};

/** A class's strength in the variable the readings bend with: ohm for shorts, siemens for series faults. */
export interface StrengthGrid {
  readonly lnLeast: number;
  readonly lnMost: number;
  /** Log density at `tableSize` even steps of ln(theta) over the range. */
  readonly logDensity: Float64Array;
  /** Nodes spread over the whole range, ends included. */
  readonly lnNodes: Float64Array;
}

const tableSize = 513;

/** Nodes over the whole range; the fit brings 17 more of its own. */
export const globalNodes = 24;

/**
 * The table of one class's strength in ln(theta).
 * @example
 * strengthGrid('open').lnNodes.length // => 24
 */
export function strengthGrid(faultClass: FaultClass): StrengthGrid {
  return grids[faultClass];
}

function layGrid(faultClass: FaultClass): StrengthGrid {
  const { leastOhms, mostOhms, density } = faultStrengths[faultClass];
  const isSeries = isSeriesClass(faultClass);
  const lnLeast = isSeries ? -Math.log(mostOhms) : Math.log(leastOhms);
  const lnMost = isSeries ? -Math.log(leastOhms) : Math.log(mostOhms);
  const step = (lnMost - lnLeast) / (tableSize - 1);
  const logDensity = Float64Array.from({ length: tableSize }, (_, i) => {
    const ln = lnLeast + i * step;
    return Math.log(density(isSeries ? -ln : ln));
  });
  const lnNodes = Float64Array.from(
    { length: globalNodes },
    (_, i) => lnLeast + ((lnMost - lnLeast) * i) / (globalNodes - 1),
  );
  return { lnLeast, lnMost, logDensity, lnNodes };
}

const grids = Object.fromEntries(faultClasses.map((kind) => [kind, layGrid(kind)])) as Record<
  FaultClass,
  StrengthGrid
>;

/**
 * Log density of a grid at ln(theta), straight between the table's steps.
 * @example
 * logDensityAt(strengthGrid('high-resistance'), 0) // => -Math.log(Math.log(1e5 / 0.2))
 */
export function logDensityAt(grid: StrengthGrid, lnTheta: number): number {
  const place = ((lnTheta - grid.lnLeast) / (grid.lnMost - grid.lnLeast)) * (tableSize - 1);
  const below = Math.min(tableSize - 2, Math.max(0, Math.floor(place)));
  const low = grid.logDensity[below] as number;
  return low + ((grid.logDensity[below + 1] as number) - low) * (place - below);
}
