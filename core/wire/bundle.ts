import { copper } from './copper.ts';
import { type Wire, wireShape } from './wire-shape.ts';

/** Share of a bundle's round section that is wire: common practice, no source. */
export const packing = 0.75;
/** The same laid loosely, and pulled tight by its cover: judgement, no source. */
export const packingSpread = { loose: 0.65, tight: 0.85 } as const;

/** Mass of wire, tape included, over wire alone: common practice, no source. */
export const tapeMassFactor = 1.1;

/** A loom's cross-section as a beam. Mean stiffness is the geometric mean of the bounds. */
export interface Bundle {
  readonly wireCount: number;
  readonly diameterMm: number;
  readonly kgPerMetre: number;
  /** N mm2: wires that slip on each other freely, the geometric mean, and one solid rod. */
  readonly stiffnessNMm2: { readonly slipping: number; readonly mean: number; readonly stuck: number };
}

/**
 * Diameter, mass and bending stiffness of wires laid together. D = sqrt(sum OD2 / 0.75), or OD for one
 * wire; stuck EI = slipping EI + sum(E A) D2 / 16 (form after Papailiou, from memory; that a cable lies
 * between such bounds: Spak, Agnes and Inman, cable parameters for homogenous cable-beam models). A given
 * diameter stands for more or fewer wires of the same mix.
 * @example
 * bundleOf(Array.from({ length: 10 }, () => ({ conductorMm2: 0.5, insulation: 'thin-wall' }))).diameterMm // => 5.84237
 */
export function bundleOf(wires: readonly Wire[], givenDiameterMm: number | null = null): Bundle {
  let outerSquared = 0;
  let kgPerMetre = 0;
  let slipping = 0;
  let copperMm2 = 0;
  for (const wire of wires) {
    const shape = wireShape(wire);
    outerSquared += shape.outerMm ** 2;
    kgPerMetre += shape.kgPerMetre;
    slipping += shape.slipStiffnessNMm2;
    copperMm2 += shape.copperMm2;
  }
  const computedMm = Math.sqrt(wires.length > 1 ? outerSquared / packing : outerSquared);
  const diameterMm = givenDiameterMm ?? computedMm;
  const more = (diameterMm / computedMm) ** 2;
  const min = slipping * more;
  const stuck = min + (copper.youngNPerMm2 * copperMm2 * more * diameterMm ** 2) / 16;
  return {
    wireCount: Math.max(1, Math.round(wires.length * more)),
    diameterMm,
    kgPerMetre: tapeMassFactor * kgPerMetre * more,
    stiffnessNMm2: { slipping: min, mean: Math.sqrt(min * stuck), stuck },
  };
}

/**
 * Between what a bundle's computed diameter may lie in mm, laid tight or loose; one wire has its own.
 * @example
 * diameterSpreadMm({ wireCount: 10, diameterMm: 5.84237 }) // => { tight: 5.48795, loose: 6.27571 }
 */
export function diameterSpreadMm({ wireCount, diameterMm }: Pick<Bundle, 'wireCount' | 'diameterMm'>): {
  readonly tight: number;
  readonly loose: number;
} {
  const at = (share: number): number =>
    wireCount > 1 ? diameterMm * Math.sqrt(packing / share) : diameterMm;
  return { tight: at(packingSpread.tight), loose: at(packingSpread.loose) };
}
