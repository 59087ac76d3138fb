import { betweenRows } from './between-rows.ts';
import { conductorTable } from './conductor-table.ts';
import { copper, pvc } from './copper.ts';
import { insulationTable, type WallClass } from './insulation-table.ts';

/** One wire, as far as its body goes. */
export interface Wire {
  readonly conductorMm2: number;
  readonly insulation: WallClass;
}

/** Cross-section of one wire in mm, its mass, and its own bending stiffness with strands that slip. */
export interface WireShape {
  readonly strands: number;
  readonly strandMm: number;
  readonly conductorMm: number;
  readonly copperMm2: number;
  readonly minimumWallMm: number;
  readonly outerMm: number;
  readonly kgPerMetre: number;
  readonly slipStiffnessNMm2: number;
}

const known = new Map<WallClass, Map<number, WireShape>>();

/**
 * The cross-section of a wire from the conductor and insulation tables, straight between sizes. Beyond
 * the table the conductor grows with the root of its area and the wall stays that of the last row.
 * @example
 * wireShape({ conductorMm2: 0.5, insulation: 'thin-wall' }).outerMm // => 1.6
 */
export function wireShape(wire: Wire): WireShape {
  let ofClass = known.get(wire.insulation);
  if (!ofClass) {
    ofClass = new Map();
    known.set(wire.insulation, ofClass);
  }
  let shape = ofClass.get(wire.conductorMm2);
  if (!shape) {
    shape = shapeOf(wire);
    ofClass.set(wire.conductorMm2, shape);
  }
  return shape;
}

function shapeOf({ conductorMm2, insulation }: Wire): WireShape {
  const strandMm = betweenRows(conductorTable, conductorMm2, (row) => row.strandMm);
  const inTable = conductorTable.find((row) => row.mm2 === conductorMm2);
  const strands = inTable?.strands ?? Math.max(1, Math.round(conductorMm2 / (0.7854 * strandMm ** 2)));
  const first = conductorTable[0];
  const last = conductorTable[conductorTable.length - 1];
  const edge = first && conductorMm2 < first.mm2 ? first : last && conductorMm2 > last.mm2 ? last : null;
  const conductorMm = edge
    ? edge.diameterMm * Math.sqrt(conductorMm2 / edge.mm2)
    : betweenRows(conductorTable, conductorMm2, (row) => row.diameterMm);
  const rows = insulationTable[insulation];
  const nominalWallMm = betweenRows(rows, conductorMm2, (row) => row.nominalWallMm);
  const minimumWallMm = betweenRows(rows, conductorMm2, (row) => row.minimumWallMm);
  const listedOuterMm = betweenRows(rows, conductorMm2, (row) => row.outerMm);
  const outerMm = Math.max(listedOuterMm, conductorMm + 2 * nominalWallMm);
  const copperMm2 = strands * (Math.PI / 4) * strandMm ** 2;
  const insulationMm2 = (Math.PI / 4) * (outerMm ** 2 - conductorMm ** 2);
  return {
    strands,
    strandMm,
    conductorMm,
    copperMm2,
    minimumWallMm,
    outerMm,
    // mm2 x g/cm3 is g/m.
    kgPerMetre: (copperMm2 * copper.gramsPerCm3 + insulationMm2 * pvc.gramsPerCm3) / 1000,
    slipStiffnessNMm2:
      strands * copper.youngNPerMm2 * secondMoment(strandMm) +
      pvc.youngNPerMm2 * (secondMoment(outerMm) - secondMoment(conductorMm)),
  };
}

const secondMoment = (diameterMm: number) => (Math.PI * diameterMm ** 4) / 64;
