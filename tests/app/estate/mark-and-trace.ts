import { drawWords } from '#renderer/language/draw.ts';
import { circuitDutyWords, circuitEndKindWords, rubSpotKindWords } from '#renderer/language/words.ts';
import { estateCircuits } from './circuit-table.ts';
import { partNamed, planOf } from './estate-places.ts';
import type { Hands } from './hands.ts';
import { estateRubSpots } from './rub-spot-table.ts';

const { fields, tools } = drawWords;

/** Places where the loom can rub, with kind, height, severity and free gap. */
export async function markRubSpots({ hand, details }: Hands): Promise<void> {
  await hand.takeUp(tools['rub-spot']);
  for (const spot of estateRubSpots) {
    const shape = spot.points.length > 1 ? 'line' : 'point';
    await hand.pickNext(drawWords.shapes[shape]);
    await hand.chooseNext(fields.kind, rubSpotKindWords[spot.kind]);
    await details.toAnother(async () => {
      await hand.trace(spot.points);
      if (shape === 'line') await hand.strike('Enter');
    });
    await details.enter(fields.name, spot.name);
    await details.enter(fields.z, spot.heightMm);
    if (spot.severity) await details.pick(fields.severities[spot.severity]);
    if (spot.side) await details.pick(fields.sides[spot.side]);
    if (spot.clearanceMm !== undefined) await details.enter(fields.clearance, spot.clearanceMm);
    if (spot.note) await details.enter(fields.note, spot.note);
  }
}

/** Circuits from end to end, with wire, fuse, what sits at the ends, and pins. */
export async function traceCircuits({ hand, details }: Hands): Promise<void> {
  await hand.takeUp(tools.trace);
  for (const circuit of estateCircuits) {
    const ends = [partNamed(circuit.from), partNamed(circuit.to)];
    await details.toAnother(async () => {
      for (const { at } of ends) await hand.trace([planOf(at)]);
    });
    await details.enter(fields.name, circuit.name);
    await details.enter(fields.colours, circuit.colours);
    await details.enter(fields.conductor, circuit.mm2);
    if (circuit.fuseA) await details.enter(fields.fuse, circuit.fuseA);
    if (circuit.duty) await details.choose(fields.duty, circuitDutyWords[circuit.duty]);
    for (const [nth, kind] of [circuit.fromKind, circuit.toKind].entries()) {
      if (kind) await details.choose(fields.kind, circuitEndKindWords[kind], nth);
    }
    for (const [part, pin] of circuit.pins) await details.enter(fields.pin(part), pin);
    if (circuit.note) await details.enter(fields.note, circuit.note);
  }
}
