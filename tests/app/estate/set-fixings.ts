import { expect } from '@playwright/test';
import { drawWords } from '#renderer/language/draw.ts';
import { loomWords } from '#renderer/language/draw-loom.ts';
import { clipKindWords } from '#renderer/language/words.ts';
import { placeOn } from './estate-places.ts';
import type { Hands } from './hands.ts';
import { handSetFixings, missingFixing, paintedPanel } from './run-table.ts';

const { fields, tags, tools } = drawWords;

/** Fixings set one by one where they sit, with their exact place typed, and the one that is missing. */
export async function setFixings({ hand, details }: Hands): Promise<void> {
  await hand.takeUp(tools.clip);
  for (const { run, kind, stationsMm } of handSetFixings) {
    await hand.chooseNext(fields.kind, clipKindWords[kind]);
    for (const stationMm of stationsMm) {
      await details.toAnother(() => hand.trace([placeOn(run, stationMm)]));
      await details.enter(fields.station, stationMm);
    }
  }
  const { run, stationMm } = missingFixing;
  await details.toAnother(() => hand.trace([placeOn(run, stationMm)]));
  await expect(details.field(fields.missing)).toBeChecked();
}

/** A panel painted along the loom, and its ends put right by figures. */
export async function paintPanel({ hand, details }: Hands): Promise<void> {
  const { run, panel, fromMm, toMm } = paintedPanel;
  await hand.takeUp(tools.paint);
  await hand.chooseNext(loomWords.paintPanel, panel);
  const middle = [0.25, 0.5, 0.75].map((share) => placeOn(run, fromMm + (toMm - fromMm) * share));
  await hand.sweep(middle);
  await hand.takeUp(tools.select);
  await details.toAnother(() => hand.trace([placeOn(run, fromMm - 20)]));
  const line = details.side.locator('.tag-line').filter({ hasText: panel });
  for (const [label, mm] of [
    [tags.from, fromMm],
    [tags.to, toMm],
  ] as const) {
    await line.getByLabel(label).click({ clickCount: 3 });
    // Typed digit by digit, as a person does: the field must stay the same one all the while.
    await hand.board.page().keyboard.type(String(mm));
    await expect(line.getByLabel(label)).toHaveValue(String(mm));
  }
}
