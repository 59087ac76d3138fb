import { expect } from '@playwright/test';
import { drawWords } from '#renderer/language/draw.ts';
import { snapWords } from '#renderer/language/draw-board.ts';
import { coveringWords, nodeKindWords, segmentTraitWords } from '#renderer/language/words.ts';
import type { Place } from '../drawing-hand.ts';
import { partNamed, planOf, wayOf } from './estate-places.ts';
import type { Hands } from './hands.ts';
import { type DrawnPart, estateParts } from './part-table.ts';
import { type DrawnRun, estateRuns } from './run-table.ts';
import { tickPanels } from './tick-panels.ts';

const { fields, tags, tools } = drawWords;

/** The branch that comes of itself when a run is drawn onto another. */
const grown = 'Tailgate branch';

/** Modules, plugs, parts and branches where they sit, named, with height and what must come off to reach them. */
export async function setParts(hands: Hands): Promise<void> {
  const { hand, details } = hands;
  await hand.takeUp(tools.node);
  let kind: DrawnPart['kind'] | null = null;
  for (const part of estateParts) {
    if (part.name === grown) continue;
    if (part.kind !== kind) {
      kind = part.kind;
      await hand.chooseNext(fields.kind, nodeKindWords[kind]);
    }
    const [xMm, yMm] = part.at;
    await details.toAnother(() => hand.trace([[xMm, yMm]]));
    await describePart(hands, part);
  }
}

async function describePart({ details }: Hands, part: DrawnPart): Promise<void> {
  await details.enter(fields.name, part.name);
  await details.enter(fields.z, part.at[2]);
  await tickPanels(details, fields.reach, part.reach);
  if (part.note) await details.enter(fields.note, part.note);
}

/** The runs of the loom from part to part, each with its cover, heights, fixings and what hides it. */
export async function layRuns(hands: Hands): Promise<void> {
  const { hand, details } = hands;
  await hand.takeUp(tools.route);
  await hand.board.page().getByRole('checkbox', { name: snapWords.smooth }).check();
  for (const run of estateRuns) {
    if (run.to === grown || run.from === grown) continue;
    await details.toAnother(() => layRoute(hands, wayOf(run)));
    await describeRun(hands, run);
  }
}

/** One route from its first place to its last. */
async function layRoute({ hand }: Hands, places: readonly Place[]): Promise<void> {
  await hand.trace(places);
  await hand.strike('Enter');
}

/** The wires in the tailgate: one straight run from the glass to the motor, on which the others are drawn. */
export async function layTailgate(hands: Hands): Promise<void> {
  const { hand, details } = hands;
  const branch = partNamed(grown);
  const glass = planOf(partNamed('Heated rear glass tab').at);
  const motor = planOf(partNamed('Rear wiper motor').at);
  await hand.takeUp(tools.route);
  await details.toAnother(() => layRoute(hands, [glass, motor]));
  const through = estateRuns.filter(({ from, to }) => from === grown || to === grown);
  const [gaiter, plate] = ['Left hinge gaiter', 'Tailgate branch to number-plate lamp'].map(
    (name) => through.find((run) => run.name === name) as DrawnRun,
  ) as [DrawnRun, DrawnRun];
  // Pressed on the straight run, which is where the branch comes.
  const onRun = between(glass, motor, 0.55);
  await details.toAnother(() => layRoute(hands, [...wayOf(gaiter).slice(0, -1), onRun]));
  await hand.takeUp(tools.select);
  await details.toAnother(() => hand.trace([onRun]));
  await describePart(hands, branch);
  await details.enter(fields.x, branch.at[0]);
  await details.enter(fields.y, branch.at[1]);
  await hand.takeUp(tools.route);
  await details.toAnother(() => layRoute(hands, wayOf(plate)));
  await describeRun(hands, plate);
  await hand.takeUp(tools.select);
  for (const run of through) {
    if (run === plate) continue;
    const [from, next] = wayOf(run) as [Place, Place];
    await details.toAnother(() => hand.trace([between(from, next, 0.3)]));
    await describeRun(hands, run);
  }
  // The last run's end is shown rounded, which must not count as beyond it.
  await expect(details.side.getByRole('alert')).toHaveCount(0);
}

const between = (a: Place, b: Place, share: number): Place => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

async function describeRun(hands: Hands, run: DrawnRun): Promise<void> {
  const { details } = hands;
  await details.enter(fields.name, run.name);
  await details.enter(fields.routeName, run.route);
  if (run.cover) await details.choose(fields.cover, coveringWords[run.cover]);
  await details.enter(fields.bundle, run.bundleMm);
  if (run.measuredMm) await details.enter(fields.measured, run.measuredMm);
  for (const trait of run.traits ?? []) await details.tick(segmentTraitWords[trait]);
  if (run.bends.length > 0) {
    await details.unfold('Heights');
    for (const [index, [, , zMm]] of run.bends.entries()) await details.enter(fields.bend(index + 1), zMm);
  }
  await hideRun(hands, run);
  if (run.clips) {
    await details.unfold(fields.clips);
    const form = details.side.getByRole('form', { name: fields.evenly });
    if (run.clips !== 3) await form.getByLabel(fields.count).fill(String(run.clips));
    await form.getByRole('button', { name: fields.evenly }).click();
  }
  if (run.note) await details.enter(fields.note, run.note);
}

/** Says which panels hide a run: as their areas lie over it, or panel by panel with its stretch. */
async function hideRun({ details }: Hands, { hidden }: DrawnRun): Promise<void> {
  if (hidden === 'as-drawn') {
    await details.click(tags.propose);
    await details.click(/^Confirm for this run/);
    return;
  }
  for (const [panel, fromMm, toMm] of hidden) {
    await details.choose(tags.add, panel);
    const line = details.side.locator('.tag-line').filter({ hasText: panel });
    if (toMm !== 'end') await line.getByLabel(tags.to).fill(String(toMm));
    if (fromMm > 0) await line.getByLabel(tags.from).fill(String(fromMm));
  }
}
