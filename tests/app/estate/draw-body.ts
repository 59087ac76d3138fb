import { drawWords } from '#renderer/language/draw.ts';
import { severalWords } from '#renderer/language/draw-several.ts';
import { cautionWords, outlineKindWords, panelKindWords } from '#renderer/language/words.ts';
import type { Place } from '../drawing-hand.ts';
import type { Hands } from './hands.ts';
import { estateOutlines } from './outline-table.ts';
import { estatePanels } from './panel-table.ts';
import { tickPanels } from './tick-panels.ts';

const { fields, tools } = drawWords;

const closedLine = (places: readonly Place[]): readonly Place[] => [...places, places[0] as Place];

/** The outlines a measured body gives, without panels: those are drawn one by one. */
export async function drawMeasuredBody({ details }: Hands): Promise<void> {
  await details.unfold('Body outlines');
  await details.enter('Length, bumper to bumper', 4_750);
  await details.enter('Width without mirrors', 1_840);
  await details.enter('Wheelbase, axle to axle', 2_800);
  await details.side.getByRole('checkbox', { name: /usual panels/ }).uncheck();
  await details.click('Draw the outlines');
}

/** Body lines beside those, pressed from corner to corner; the left of a pair is mirrored. */
export async function drawOutlines({ hand, details }: Hands): Promise<void> {
  await hand.takeUp(tools.outline);
  for (const { name, kind, corners, closed, round = [], bothSides } of estateOutlines) {
    await details.toAnother(async () => {
      await hand.trace(closed ? closedLine(corners) : corners);
      if (!closed) await hand.strike('Enter');
    });
    await details.enter(fields.name, name);
    await details.choose(fields.kind, outlineKindWords[kind]);
    if (round.length > 0) {
      await details.unfold('Corners');
      for (const corner of round) {
        const group = details.side.getByRole('group', { name: `Corner ${corner}`, exact: true });
        await group.getByRole('checkbox').check();
      }
    }
    if (bothSides) await details.toAnother(() => details.click(fields.mirror));
  }
}

/** Panels by the corners of their areas, with minutes, order, care and notes; the left of a pair is mirrored with all of it. */
export async function drawPanels({ hand, details }: Hands): Promise<void> {
  await hand.takeUp(tools.panel);
  for (const panel of estatePanels) {
    await details.toAnother(() => hand.trace(closedLine(panel.area)));
    await details.enter(fields.name, panel.name);
    await details.choose(fields.kind, panelKindWords[panel.kind]);
    await details.enter(fields.minutesOff, panel.minutesOff);
    await details.enter(fields.minutesOn, panel.minutesOn);
    if (panel.offFirst) {
      await tickPanels(details, fields.offFirst, panel.offFirst);
    }
    for (const caution of panel.cautions ?? []) await details.tick(cautionWords[caution]);
    if (panel.note) await details.enter(fields.note, panel.note);
    if (panel.bothSides) await details.toAnother(() => details.click(severalWords.mirrorCopy));
  }
}
