import { expect, type Page, test } from '@playwright/test';
import { type AppHost, startApp } from './app-host.ts';
import { axeFaults } from './axe-faults.ts';
import { closingHand } from './closing-hand.ts';

test.describe.configure({ mode: 'serial' });

let app: AppHost;
let page: Page;
let hand: ReturnType<typeof closingHand>;

test.beforeAll(async ({ browser }) => {
  app = await startApp();
  page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  hand = closingHand(page);
  await page.goto(app.address);
});

test.afterAll(async () => {
  await page.close();
  await app.end();
});

test('the pickup that blows its left tail-lamp fuse on tracks is taken in', async () => {
  await hand.takeIn({
    model: /^New job on Brannock Scarp/,
    plate: 'STOCK 740',
    odometer: '97000',
    complaint: 'Left tail-lamp fuse blows on tracks, fine on the road',
    failureType: 'Short to earth',
    circuit: 'Left tail feed',
  });
  expect(await axeFaults(page)).toEqual([]);
});

test('a lamp in place of the fuse, 1.75 A and 196 mV to the far end, puts the spare wheel first', async () => {
  const form = await hand.beginReading('Volt drop with current');
  const understood = form.getByRole('button', { name: /read and understood/ });
  if (await understood.count()) await understood.first().click();
  await form.getByLabel('Current, A').fill('1.75');
  await form.getByLabel('Meter shows, mV').fill('196');
  await hand.keepReading();
  await expect(hand.opening('Spare wheel')).toBeVisible();
});

test('with the spare down, the loom lies on the hanger bracket, a little beyond the scuffed sender wire', async () => {
  await hand.openAndLook('Spare wheel', 'Cause found');
  await hand.toClose();
  const cause = hand.step('What was found').getByRole('article', { name: /^Cause found/ });
  await hand.describe(cause, {
    damage: 'Chafed through',
    why: 'Fixing missing or broken',
    wire: 'Left tail feed',
    note: 'Clip gone, loom on the edge of the hanger bracket. Sender wire beside it scuffed, not through.',
  });
  await cause.getByRole('button', { name: 'Keep this find' }).click();
  await hand.prove();
  expect(await axeFaults(page)).toEqual([]);
});

test('the scuffed sender wire beyond it is damage of its own: marked, described, and asked to be repaired too', async () => {
  const along = hand.step('Look along the loom');
  await along.getByRole('group', { name: 'Along the loom, each way' }).getByLabel('Damaged').check();
  await along.getByRole('group', { name: 'The twin place' }).getByLabel('Sound').check();
  await along.getByRole('button', { name: 'Keep the look' }).click();
  await along.getByRole('link', { name: 'Mark it in the search' }).click();
  await page.getByRole('tab', { name: 'Stretches' }).click();
  await page
    .getByRole('list', { name: /Stretches/ })
    .getByRole('button', { name: /Rail end plug/ })
    .first()
    .click();
  const picked = page.getByRole('region', { name: 'Picked stretch' });
  await picked.getByRole('button', { name: 'Seen, damaged, not the cause' }).click();
  await page.getByRole('link', { name: 'Repair and close' }).first().click();
  const found = hand.step('What was found');
  const other = found.getByRole('article', { name: /^Seen, damaged, not the cause/ });
  await other.getByRole('button', { name: 'Describe this find' }).click();
  await hand.describe(other, {
    damage: 'Scuffed, not through',
    why: 'Rubs on an edge or flange',
    wire: 'Fuel level sender',
    note: 'Fuel sender wire, 0.3 m further back on the rail.',
  });
  await other.getByRole('button', { name: 'Keep this find' }).click();
  await expect(found).toContainText('Not the cause. The job stays open: repair it too');
  await expect(hand.step('Close the job')).toContainText('Other damage was found and is not repaired.');
  await hand.repair(/^Damaged, not the cause/, ['Scuffed insulation covered', 'Sleeve']);
  await expect(hand.step('Close the job')).not.toContainText('Other damage was found');
  expect(await axeFaults(page)).toEqual([]);
});

test('after the repair the lamp must stay dark, and current says the fault is still there', async () => {
  await hand.repair(/^Proved cause/, [
    'Closed crimp under adhesive-lined heat-shrink',
    'Fixing renewed',
    'Sleeve',
  ]);
  const drop = hand
    .step('Proof: the same tests again')
    .getByRole('listitem')
    .filter({ hasText: '1.75 A in at' });
  await expect(drop).toContainText('Good is: no current: under 0.01 A, lamp dark');
  await drop.getByLabel('Current after the repair').fill('0.4');
  await expect(drop).toContainText('Still flowing.');
  await expect(drop.getByRole('button', { name: /^Good:/ })).toBeDisabled();
  await drop.getByLabel('Drop to the far end').fill('47');
  await drop.getByRole('button', { name: /^Still bad:/ }).click();
  await expect(drop).toContainText('47 mV');
});

test('the search goes on with that reading, everything entered stays, and undo takes it back', async () => {
  await hand
    .step('Proof: the same tests again')
    .getByRole('button', { name: 'Search on with what is left' })
    .click();
  await expect(page.locator('.dig-entry').first()).toBeVisible({ timeout: 40_000 });
  await page.getByRole('tab', { name: 'Record' }).click();
  await expect(page.locator('.record-words').getByText('Fault still there: search goes on')).toBeVisible();
  await expect(page.getByText('Clip gone, loom on the edge').first()).toBeVisible();
  await page.getByRole('tab', { name: /^Readings/ }).click();
  await expect(page.getByRole('listitem').filter({ hasText: '47 mV' }).first()).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page
    .getByRole('region', { name: 'Proved cause' })
    .getByRole('link', { name: 'Repair and close' })
    .click();
});

test('tried again with the lead off the trailer socket, it is dark; everything good, the job is closed', async () => {
  const proof = hand.step('Proof: the same tests again');
  await proof.getByRole('button', { name: 'Try again: Test again' }).click();
  const drop = proof.getByRole('listitem').filter({ hasText: '1.75 A in at' });
  await drop.getByLabel('Current after the repair').fill('0');
  await drop.getByRole('button', { name: /^Good:/ }).click();
  await expect(drop).toContainText('Good, 0 A');
  await hand.allGood();
  await hand.refit();
  await hand.close();
  await page.getByRole('link', { name: 'Customer’s report' }).click();
  const sheet = page.locator('.sheet[data-ready=true]');
  await expect(sheet).toContainText('196 mV');
  await expect(sheet).toContainText('Good: 0 A');
  expect(await axeFaults(page)).toEqual([]);
});
