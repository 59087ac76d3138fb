import { expect, type Locator, type Page, test } from '@playwright/test';
import { type AppHost, startApp } from './app-host.ts';
import { axeFaults } from './axe-faults.ts';

test.describe.configure({ mode: 'serial' });

let app: AppHost;
let page: Page;

test.beforeAll(async ({ browser }) => {
  app = await startApp();
  page = await browser.newPage();
  await page.goto(app.address);
  await button(/Varnholt Aldine, estate, 2016\s*Estate/).click();
  await page.locator('[data-board]').waitFor();
});

test.afterAll(async () => {
  await page.close();
  await app.end();
});

const button = (name: string | RegExp): Locator => page.getByRole('button', { name }).first();
const side = (): Locator => page.getByRole('complementary');
const undo = (): Promise<void> => button(/^Undo/).click();

/** Keys held down join into few steps back, how many depends on how fast they came. */
async function undoUntil(place: Locator, attribute: string, value: string | null): Promise<void> {
  for (let i = 0; i < 4 && (await place.getAttribute(attribute)) !== value; i++) await undo();
  await expect(place).toHaveAttribute(attribute, value ?? '');
}

/** Opens a thing's details from the list beside the board. */
async function pick(list: string, name: string | RegExp): Promise<void> {
  await page.getByRole('tab', { name: 'List', exact: true }).click();
  await page.getByRole('region', { name: list }).getByRole('button', { name }).first().click();
}

const centre = async (place: Locator): Promise<{ readonly x: number; readonly y: number }> => {
  const box = await place.boundingBox();
  if (!box) throw new Error('it is not in sight');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

async function dragTo(from: Locator, dx: number, dy: number): Promise<void> {
  const { x, y } = await centre(from);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx, y + dy, { steps: 6 });
  await page.mouse.up();
}

test('heights are dragged, stepped and typed in the side profile, each gesture one step back', async () => {
  await pick('Runs', /^Left sill/);
  await button(/^Heights/).click();
  const length = page.locator('[data-heights-length-mm]');
  const lengthMm = async (): Promise<number> => Number(await length.getAttribute('data-heights-length-mm'));
  const handle = page.getByRole('slider', { name: 'Height of Bend 2' });
  await handle.scrollIntoViewIfNeeded();
  const before = await lengthMm();
  const zMm = await handle.getAttribute('aria-valuenow');

  await dragTo(handle, 0, -60);
  await expect(handle).not.toHaveAttribute('aria-valuenow', zMm ?? '');
  expect(await lengthMm()).toBeGreaterThan(before);
  await undo();
  await expect(handle).toHaveAttribute('aria-valuenow', zMm ?? '');
  expect(await lengthMm()).toBeCloseTo(before, 6);

  await handle.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Shift+ArrowUp');
  await expect(handle).toHaveAttribute('aria-valuenow', String(Number(zMm) + 31));
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('slider', { name: 'Height of Bend 3' })).toBeFocused();
  await undoUntil(handle, 'aria-valuenow', zMm);

  const typed = page.locator('.heights').getByLabel('Bend 2', { exact: true });
  await typed.fill('400');
  await expect(handle).toHaveAttribute('aria-valuenow', '400');
  await typed.fill('high');
  await expect(page.getByText(/Enter a number from/)).toBeVisible();
  await expect(typed).toHaveValue('high');
  await undo();
  await expect(handle).toHaveAttribute('aria-valuenow', zMm ?? '');
  expect(await axeFaults(page)).toEqual([]);
});

test('what must be off first is drawn by dragging or by keys, and a ring is refused by name', async () => {
  await pick('Panels', /^Left front carpet/);
  await button('Order of coming off').click();
  await button('Show the order of all panels').click();
  const sheet = page.getByRole('region', { name: 'Order of all panels' });
  const box = (name: string | RegExp): Locator => sheet.locator('.order-box').filter({ hasText: name });
  const arrows = sheet.locator('.order-cut');
  const before = await arrows.count();
  const start = await centre(box('Glovebox'));
  const end = await centre(box('Centre console'));
  await dragTo(box('Glovebox'), end.x - start.x, end.y - start.y);
  await expect(arrows).toHaveCount(before + 1);

  await test.step('back the other way it would be a ring', async () => {
    await box('Centre console').focus();
    await page.keyboard.press('Enter');
    await expect(sheet.getByText(/Centre console comes off before/)).toBeVisible();
    await box('Glovebox').focus();
    await page.keyboard.press('Enter');
    const refusal = sheet.getByRole('alert');
    await expect(refusal).toContainText('Centre console cannot come off before Glovebox');
    await expect(refusal).toContainText('ring');
    await expect(arrows).toHaveCount(before + 1);
  });

  await test.step('an arrow is taken out with Delete, and both steps are undone one by one', async () => {
    await sheet.getByRole('button', { name: 'Take out: Glovebox comes off before Centre console' }).focus();
    await page.keyboard.press('Delete');
    await expect(arrows).toHaveCount(before);
    expect(await axeFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(sheet).toHaveCount(0);
    await undo();
    await button('Show the order of all panels').click();
    await expect(arrows).toHaveCount(before + 1);
    await page.keyboard.press('Escape');
    await undo();
    await button('Show the order of all panels').click();
    await expect(arrows).toHaveCount(before);
    await page.keyboard.press('Escape');
  });
});

test('a run says why it can chafe there, and what a fixing would take away; it is put on by the button', async () => {
  await pick('Runs', /^Boot floor edge, left/);
  await button(/^Why it can chafe \(/).click();
  const reasons = side().getByRole('list', { name: 'Shares of the hazard here' });
  await expect(reasons.getByText(/Screw tip \(Load rail screw\) \d+ mm away/)).toBeVisible();
  await expect(side().getByText(/^Fixings \d+ mm apart.*PVC tape only\.$/)).toBeVisible();
  const place = side().getByRole('slider', { name: /^Hazard along the run/ });
  await place.focus();
  await page.keyboard.press('Home');
  await expect(place).toHaveAttribute('aria-valuenow', '0');
  await side().getByRole('button', { name: 'Worst place' }).click();

  const fall = side().locator('[data-falls-by]');
  for (const what of ['A cover', 'An edge strip', 'A fixing here']) {
    await side().getByRole('button', { name: what }).click();
    expect(Number(await fall.getAttribute('data-falls-by'))).toBeGreaterThan(0.05);
    await expect(fall.getByText('Before')).toBeVisible();
  }
  await side().getByRole('button', { name: 'Find the best place for it' }).click();
  const best = Number(await fall.getAttribute('data-falls-by'));
  const title = button(/^Why it can chafe \(/);
  const shareBefore = (await title.textContent()) ?? '';
  const fixings = side().getByRole('button', { name: /^Fixings \(\d+\)/ });
  const countBefore = (await fixings.textContent()) ?? '';
  await side()
    .getByRole('button', { name: /^It is fitted: put this fixing/ })
    .click();
  await expect(fixings).not.toHaveText(countBefore);
  if (best > 0.5) await expect(title).not.toHaveText(shareBefore);
  expect(await axeFaults(page)).toEqual([]);
  await undo();
  await expect(fixings).toHaveText(countBefore);
  await expect(title).toHaveText(shareBefore);
});

test('every rub spot says how much hazard it adds, what its kind does, and the board says it on pointing', async () => {
  await pick('Rub spots', 'Load rail screw');
  const added = side().getByRole('region', { name: 'Hazard it adds' });
  await expect(added).toContainText(/of the hazard on Boot floor edge, left \(\d+ %\)/);
  await expect(added).toContainText(/whole map’s/);
  await expect(
    side().getByText('A thread works like a rasp, and often it was fitted after the loom.').first(),
  ).toBeVisible();
  await side().getByRole('button', { name: 'What each kind does' }).click();
  await expect(
    side().getByText('Painted sheet without an edge; slow, but over a long stretch.'),
  ).toBeVisible();
  await added.getByRole('button', { name: /^What if/ }).click();
  await expect(added.locator('[data-falls-by]')).toContainText('falls by');

  await pick('Runs', /^Roof side, left/);
  const board = await page.locator('[data-board]').boundingBox();
  if (!board) throw new Error('no board');
  const card = page.locator('.board-card');
  // The run crosses the board: somewhere on its way down the pointer meets it.
  const x = board.x + board.width / 2;
  for (let y = board.y + 70; y < board.y + board.height && (await card.count()) === 0; y += 6) {
    await page.mouse.move(x, y);
    const onSomething = await page
      .locator('[data-board]')
      .evaluate(
        (each) =>
          getComputedStyle(each).cursor === 'pointer' || each.querySelector('[style*="pointer"]') !== null,
      );
    if (onSomething) await page.waitForTimeout(400);
  }
  await expect(card).toContainText(/ mm to \d+ mm from /);
});

test('a circuit offers its other ways, can be sent through a run, turned round and cut short', async () => {
  await page.getByRole('tab', { name: 'List', exact: true }).click();
  await button('Draw and change by figures').click();
  const figures = side().locator('.by-figures');
  await figures.getByLabel('What to do').selectOption({ label: 'Add a run' });
  await figures.getByLabel('Route').fill('Second sill');
  await figures.getByLabel('Begins at').selectOption({ label: 'Left A foot plug' });
  await figures.getByLabel('Ends at').selectOption({ label: 'Left B foot branch' });
  await figures.getByRole('button', { name: 'One more bend' }).click();
  const bend = figures.getByRole('group', { name: 'Bend 1' });
  await bend.getByLabel('From the front').fill('2000');
  await bend.getByLabel('From the centre line').fill('-500');
  await figures.locator('form:visible').getByRole('button', { name: 'Add it' }).click();
  await expect(figures.getByText('Done: Second sill.')).toBeVisible();

  await pick('Circuits', 'Rear wiper feed');
  const traced = side().getByText(/^Traced length/);
  const lengthBefore = (await traced.textContent()) ?? '';
  await button('Other ways').click();
  const ways = side().getByRole('list', { name: 'Other ways' }).getByRole('button');
  await expect(ways).toHaveCount(2);
  await expect(ways.nth(0)).toContainText('taken now');
  await expect(ways.nth(1)).toContainText(/mm longer, through Second sill instead of Left sill/);
  await ways.nth(1).click();
  await expect(traced).not.toHaveText(lengthBefore);
  await undo();
  await expect(traced).toHaveText(lengthBefore);

  await button(/^The way it takes/).click();
  await side().getByLabel('Send it through').selectOption({ label: 'Second sill' });
  await expect(traced).not.toHaveText(lengthBefore);
  await undo();
  await side()
    .getByRole('button', { name: /^4\. Left sill/ })
    .click();
  await expect(
    side()
      .getByText(/^Worked out from \d+ circuits traced through it/)
      .first(),
  ).toBeVisible();
  await side().getByRole('button', { name: 'Not through this run' }).click();
  await expect(side().getByRole('button', { name: /^4\. Second sill/ })).toBeVisible();
  await undo();
  await side()
    .getByRole('button', { name: /^1\. Fuse box tail/ })
    .click();
  await side().getByRole('button', { name: 'Not through this run' }).last().click();
  await expect(side().getByRole('alert')).toContainText('is the only way between the two ends');

  await side().getByRole('button', { name: 'Swap its ends' }).click();
  await expect(side().getByRole('button', { name: /^1\. Tailgate branch to wiper motor/ })).toBeVisible();
  await undo();
  await side().getByRole('button', { name: 'End it at Fuse box branch' }).click();
  await expect(side().getByRole('button', { name: /^The way it takes \(1 run\)/ })).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await undo();
  await expect(traced).toHaveText(lengthBefore);
});

test('without a pointer, things are added, moved, tagged and deleted by figures', async () => {
  await page.getByRole('tab', { name: 'List', exact: true }).focus();
  await page.keyboard.press('Enter');
  await button('Draw and change by figures').focus();
  await page.keyboard.press('Enter');
  const figures = side().locator('.by-figures');
  const form = figures.locator('form:visible');
  const task = async (label: string): Promise<void> => {
    await figures.getByLabel('What to do').selectOption({ label });
  };
  const parts = page.getByRole('region', { name: 'Plugs and parts' }).getByRole('button');
  const count = await parts.count();
  await form.getByLabel('Name', { exact: true }).fill('Tow bar splice');
  await form.getByLabel('From the front').fill('4300');
  await form.getByLabel('From the centre line').fill('-320');
  await form.getByLabel('Height', { exact: true }).fill('280');
  await form.getByRole('button', { name: 'Add it' }).focus();
  await page.keyboard.press('Enter');
  await expect(figures.getByText('Done: Tow bar splice.')).toBeVisible();
  await expect(parts).toHaveCount(count + 1);

  await test.step('a panel too small to be one keeps what was typed and says what it lacks', async () => {
    await task('Add a panel');
    await form.getByLabel('Name', { exact: true }).fill('Tow cover');
    await button('Draw and change by figures').click();
    await expect(form).toHaveCount(0);
    await button('Draw and change by figures').click();
    await task('Add a panel');
    await expect(form.getByLabel('Name', { exact: true })).toHaveValue('Tow cover');
    await form.getByRole('button', { name: 'Take out corner 4' }).click();
    await form.getByRole('button', { name: 'Take out corner 3' }).click();
    await form.getByRole('button', { name: 'Add it' }).click();
    await expect(form.getByText('3 corners are needed; 2 are given.')).toBeVisible();
    await expect(form.getByLabel('Name', { exact: true })).toHaveValue('Tow cover');
    await form.getByRole('button', { name: 'One more corner' }).click();
    await form.getByRole('group', { name: 'Corner 2' }).getByLabel('From the front').fill('4500');
    await form.getByRole('group', { name: 'Corner 3' }).getByLabel('From the centre line').fill('300');
    await form.getByRole('button', { name: 'Add it' }).click();
    await expect(form.getByText('Done: Tow cover.')).toBeVisible();
  });

  await test.step('a panel hides a run by its stations', async () => {
    await task('Say where a panel hides a run');
    await form.getByRole('button', { name: 'Set it' }).click();
    await expect(form.getByText('Choose a run first.')).toBeVisible();
    await form.getByLabel('Run', { exact: true }).selectOption({ index: 1 });
    await form.getByLabel('Panel', { exact: true }).selectOption({ label: 'Tow cover' });
    await form.getByLabel('From', { exact: true }).fill('10');
    await form.getByLabel('To', { exact: true }).fill('120');
    await form.getByRole('button', { name: 'Set it' }).click();
    await expect(form.getByText('Done: panel over run set.')).toBeVisible();
  });

  await test.step('rub spot, fixing and outline', async () => {
    await task('Add a rub spot');
    await form.getByRole('button', { name: 'Add it' }).click();
    await expect(form.getByText(/^Done: Raw edge/)).toBeVisible();
    await task('Add a fixing');
    await form.getByLabel('Run', { exact: true }).selectOption({ index: 2 });
    await form.getByLabel(/^Along it, from/).fill('30');
    await form.getByRole('button', { name: 'Add it' }).click();
    await expect(form.getByText('Done: Fixing.')).toBeVisible();
    await task('Add an outline');
    await form.getByRole('group', { name: 'Corner 2' }).getByLabel('From the front').fill('900');
    await form.getByRole('group', { name: 'Corner 3' }).getByLabel('From the centre line').fill('400');
    await form.getByRole('button', { name: 'Add it' }).click();
    await expect(form.getByText('Done: Body shell 1.')).toBeVisible();
    expect(await axeFaults(page)).toEqual([]);
  });

  await test.step('what is picked is moved and deleted, and every step is undone', async () => {
    await pick('Plugs and parts', 'Tow bar splice');
    const back = page.getByLabel('Rearward (x)');
    const xBefore = Number(await back.inputValue());
    await page.getByRole('tab', { name: 'List', exact: true }).click();
    await button('Draw and change by figures').click();
    await task('Move or delete what is picked');
    await expect(form.getByText('Picked: Tow bar splice.')).toBeVisible();
    await form.getByLabel('Rearward by').fill('-150');
    await form.getByRole('button', { name: 'Move', exact: true }).click();
    await page.getByRole('tab', { name: 'Details' }).click();
    await expect(back).toHaveValue(String(xBefore - 150));
    await page.getByRole('tab', { name: 'List', exact: true }).click();
    await button('Draw and change by figures').click();
    await task('Move or delete what is picked');
    await form.getByRole('button', { name: 'Delete', exact: true }).click();
    await page.getByRole('tab', { name: 'List', exact: true }).click();
    await expect(parts).toHaveCount(count);
    // Deleting, moving, outline, fixing, rub spot, tag and panel: then the part as it was first set.
    for (let i = 0; i < 7; i++) await undo();
    await page.getByRole('tab', { name: 'List', exact: true }).click();
    await expect(parts).toHaveCount(count + 1);
    await undo();
    await expect(parts).toHaveCount(count);
    await expect(page.getByText('All changes on disk')).toBeVisible();
  });
});
