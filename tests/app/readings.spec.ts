import { expect, type Locator, type Page, test } from '@playwright/test';
import { type AppHost, startApp } from './app-host.ts';
import { axeFaults } from './axe-faults.ts';

test.describe.configure({ mode: 'serial', timeout: 300_000 });

/** The first order of a job is worked out from nothing; on a busy machine that takes its time. */
const ranked = { timeout: 60_000 };

let app: AppHost;
let page: Page;

test.beforeAll(async ({ browser }) => {
  app = await startApp();
  page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(app.address);
});

test.afterAll(async () => {
  await page.close();
  await app.end();
});

const button = (name: string | RegExp): Locator => page.getByRole('button', { name });
const form = (): Locator => page.getByRole('form', { name: /Enter a reading|Put a reading right/ });
const ledgerLines = (): Locator =>
  page
    .getByRole('region', { name: 'Readings in this job' })
    .getByRole('listitem')
    .filter({ hasText: 'Put right' });
const showLedger = (): Promise<void> => page.getByRole('tab', { name: /^Readings/ }).click();

async function begin(kind: string): Promise<void> {
  if (!(await form().isVisible())) await page.keyboard.press('r');
  await form().getByLabel('Test', { exact: true }).selectOption({ label: kind });
}

const choose = (answer: string): Promise<void> =>
  form()
    .locator('label')
    .filter({ hasText: new RegExp(`^${answer}$`) })
    .click();

async function keep(): Promise<void> {
  await form().getByRole('button', { name: 'Keep' }).click();
  await expect(form()).toBeHidden();
}

async function openJob(name: string): Promise<void> {
  await page.goto(app.address);
  await page.getByText(name).click();
  await expect(page.getByRole('tab', { name: 'Where to open first' })).toBeVisible();
}

async function newJob(vehicle: string, plate: string, circuit: string): Promise<void> {
  await page.goto(app.address);
  await page.getByLabel('Search vehicle maps').fill(vehicle);
  await expect(button('New job')).toHaveCount(1);
  await button('New job').click();
  await page.getByLabel('Plate or stock number').fill(plate);
  await page.getByLabel(/^Complaint/).fill('Rear wiper dead, its fuse blows at once');
  await page.getByLabel('Failure type').selectOption({ label: 'Short to earth' });
  await page.getByLabel('Circuit under search').selectOption({ label: circuit });
  await button('Start the job').click();
  await expect(page.getByText('By then').first()).toBeVisible(ranked);
}

test('a new job on the sample hatchback has no readings yet', async () => {
  await newJob('Orlune', 'STOCK 5001', 'Rear wiper feed');
  await showLedger();
  await expect(page.getByText('No readings yet.')).toBeVisible();
});

test('what cannot be a reading is told in a sentence, and what was typed stays', async () => {
  await begin('Ohms');
  const figure = form().getByLabel('Meter shows, Ω');
  for (const [typed, told] of [
    ['', 'Type what the meter shows, or press Open line or Over range.'],
    ['abc', 'This is no figure.'],
    ['-3', 'A figure below zero cannot be here.'],
    ['1.234.5', 'There is more than one point or comma in it.'],
    ['5 V', 'What stands behind the figure is no unit of this test.'],
    ['99999999999', 'No meter reads that many ohms.'],
  ] as const) {
    await figure.fill(typed);
    await figure.press('Enter');
    await expect(form().getByRole('alert')).toContainText(told);
    await expect(figure).toHaveValue(typed);
  }
  await begin('Volts');
  await form().getByLabel('Meter shows, V').fill('400');
  await form().getByRole('button', { name: 'Keep' }).click();
  await expect(form().getByRole('alert')).toContainText('high voltage');
  // A form that is closed and opened again, and a test chosen and left, lose nothing.
  await page.keyboard.press('Escape');
  await expect(form()).toBeHidden();
  await page.keyboard.press('r');
  await expect(form().getByLabel('Meter shows, V')).toHaveValue('400');
  await begin('Ohms');
  await begin('Volts');
  await expect(form().getByLabel('Meter shows, V')).toHaveValue('400');
});

test('one reading of every kind is entered in one line and says how the car stood', async () => {
  await begin('Plug apart');
  const plug = (name: string): Locator => form().getByRole('button', { name: `Apart: ${name}` });
  await expect(plug('Rear wiper motor')).toHaveAttribute('aria-pressed', 'true');
  await choose('Stays');
  await keep();

  await begin('Move test');
  await form().getByLabel('From').selectOption({ label: 'Tailgate hinge, left' });
  await form().getByLabel('To', { exact: true }).selectOption({ label: 'Tailgate inline plug' });
  await form().getByLabel('Changed').fill('0');
  await form().getByLabel('Tries').fill('15');
  await keep();

  await begin('Ohms');
  await form().getByLabel('Meter shows, Ω').fill('0,3');
  await expect(form().getByText('Read as 0.3 Ω')).toBeVisible();
  await keep();

  await begin('Beep');
  await form().getByLabel('Second lead').selectOption({ label: 'Body' });
  await choose('Beeps');
  await keep();

  await begin('Volts');
  await form().getByLabel('Meter shows, V').fill('12.4');
  await keep();

  await begin('Volt drop with current');
  await form().getByLabel('Current, A').fill('2.8');
  await form().getByLabel('Meter shows, mV').fill('0.206 V');
  await expect(form().getByText('Read as 206 mV')).toBeVisible();
  await keep();

  await begin('Capacitance');
  await form().getByLabel('Meter shows, pF').fill('0.31n');
  await keep();

  await begin('Function');
  await choose('Fails');
  await form().getByRole('button', { name: 'Keep' }).click();
  await expect(form().getByRole('alert')).toContainText('Say which part of the loom that position bends');
  await form().getByLabel('Loom bends from').selectOption({ label: 'Tailgate hinge, left' });
  await form().getByLabel('to', { exact: true }).selectOption({ label: 'Tailgate inline plug' });
  await form().getByLabel('Position').fill('Tailgate open');
  await choose('Fails');
  await keep();

  await showLedger();
  await expect(ledgerLines()).toHaveCount(8);
  for (const [number, words, car] of [
    [1, 'Rear wiper motor apart: fault stays', 'ignition on, battery on'],
    [2, 'changed 0 of 15', 'Nothing apart, ignition on, battery on'],
    [3, 'Ohms, Fuse box to Body: 0.3 Ω', 'Rear wiper motor apart, fuse out, ignition off, battery off'],
    [4, 'Beep, Fuse box to Body: beeps', 'Rear wiper motor apart, fuse out, ignition off, battery off'],
    [5, 'Volts, Fuse box to Body: 12.4 V', 'ignition on, battery on'],
    [6, '2.8 A in at Fuse box, volts at Rear wiper motor: 206 mV', 'Rear wiper motor apart, ignition on'],
    [7, 'Capacitance, Fuse box: 310 pF', 'Rear wiper motor apart, fuse out, ignition off, battery off'],
    [8, '(Tailgate open): fails', 'Nothing apart, ignition on, battery on'],
  ] as const) {
    const line = ledgerLines().nth(number - 1);
    await expect(line).toContainText(`Reading ${number}`);
    await expect(line).toContainText(words);
    await expect(line).toContainText(car);
  }
});

test('each line says what it did, and an ordinary meter that cannot place the fault says so', async () => {
  await expect(page.getByText('Working out what it did')).toHaveCount(0, ranked);
  const ohms = ledgerLines().nth(2);
  await expect(ohms).toContainText('An ordinary meter cannot place this');
  await expect(ohms).toContainText(/A volt drop with current, taken from both ends, would, to about \d+ cm/);
  await expect(ledgerLines().nth(5)).toContainText(/Alone it says: .+Tailgate hinge, left/);
  await expect(ledgerLines().nth(5)).toContainText(/narrows the search by/);
  await expect(ledgerLines().nth(7)).toContainText('try the function in another position too');
});

test('a reading put right keeps everything that was not changed', async () => {
  await ledgerLines()
    .nth(5)
    .getByRole('button', { name: /^Put right/ })
    .click();
  await expect(form().getByLabel('Current, A')).toHaveValue('2.8');
  await form().getByLabel('Meter shows, mV').fill('210');
  await form().getByRole('button', { name: 'Keep the change' }).click();
  await expect(form()).toBeHidden();
  await expect(ledgerLines()).toHaveCount(8);
  const corrected = ledgerLines().nth(5);
  await expect(corrected).toContainText(/\d\d:\d\d, put right .+\d\d:\d\d/);
  await expect(corrected).toContainText('2.8 A in at Fuse box, volts at Rear wiper motor: 210 mV');
  await expect(corrected).toContainText('Rear wiper motor apart, ignition on, battery on');
  await expect(page.getByText('206 mV')).toHaveCount(0);
});

test('a reading is taken back, and undo and redo bring it and take it again', async () => {
  await ledgerLines()
    .filter({ hasText: '12.4 V' })
    .getByRole('button', { name: /^Take back/ })
    .click();
  await expect(ledgerLines()).toHaveCount(7);
  await button('Undo').click();
  await expect(ledgerLines().filter({ hasText: '12.4 V' })).toHaveCount(1);
  await button('Redo').click();
  await expect(ledgerLines().filter({ hasText: '12.4 V' })).toHaveCount(0);
  await button('Undo').click();
  await expect(ledgerLines()).toHaveCount(8);
});

test('after a power cut every reading is there as it was left', async () => {
  await expect(page.getByText('On disk')).toBeVisible();
  const before = await ledgerLines().locator('.ledger-said').allInnerTexts();
  await app.kill();
  app = await startApp(app.folder);
  await openJob('STOCK 5001');
  await showLedger();
  await expect(ledgerLines()).toHaveCount(8);
  expect(await ledgerLines().locator('.ledger-said').allInnerTexts()).toEqual(before);
});

test('readings that cannot both hold are named, with a way to each', async () => {
  await begin('Volt drop with current');
  await form().getByLabel('Meter shows, mV').fill('30');
  await keep();
  const notice = page.getByText(/^Readings .+ cannot all hold/);
  await expect(notice).toBeVisible(ranked);
  await button('Look at reading 9').click();
  await expect(form().getByLabel('Meter shows, mV')).toHaveValue('30');
  await page.keyboard.press('Escape');
  await page.getByRole('tab', { name: 'Where to open first' }).click();
  await expect(notice).toBeVisible();
  await button('Undo').click();
  await expect(notice).toBeHidden(ranked);
});

test('the limits of current stand at the test, with a calculator for the lamp to hand', async () => {
  await begin('Volt drop with current');
  const cautions = form().getByRole('group', { name: 'Before this test' });
  await cautions.getByRole('button', { name: /Lamp of 55 W at most/ }).click();
  await expect(cautions).toContainText('Never a larger fuse.');
  await cautions.getByLabel('Lamp to hand').selectOption({ label: '21 W' });
  await expect(cautions.getByRole('status')).toContainText('A 21 W lamp passes up to 1.75 A');
  await expect(cautions.getByRole('status')).toContainText('this fuse and wire bear 12 A');
  await cautions.getByRole('button', { name: /read and understood/ }).click();
  await expect(cautions.getByRole('button', { name: /read and understood/ })).toHaveCount(0);
  await page.keyboard.press('Escape');
  await page.getByRole('tab', { name: 'Record' }).click();
  await expect(page.getByRole('listitem').filter({ hasText: 'Read and understood' })).toHaveCount(1);
});

test('a meter of one’s own is told what is wrong, kept, and there after a restart', async () => {
  await begin('Ohms');
  await form()
    .getByRole('button', { name: /^Meter and note/ })
    .click();
  await form().getByRole('button', { name: 'Add my meter' }).click();
  await form().getByLabel('Last digit, Ω').fill('abc');
  await form().getByRole('button', { name: 'Keep this meter' }).click();
  const alert = form().getByRole('alert');
  await expect(alert).toContainText('Name: give it a name.');
  await expect(alert).toContainText('Last digit, Ω: type a figure without a unit.');
  await expect(form().getByLabel('Last digit, Ω')).toHaveValue('abc');
  await form().getByLabel('Name').fill('Bench meter');
  await form().getByLabel('Last digit, Ω').fill('0,01');
  await form().getByLabel('Beep at, Ω').fill('35');
  await form().getByLabel('Beep at, Ω').press('Enter');
  await expect(form().getByLabel('Meter', { exact: true })).toHaveValue('Bench meter');
  await form().getByLabel('Meter shows, Ω').fill('0.31');
  await keep();
  await showLedger();
  await expect(ledgerLines().filter({ hasText: '0.31 Ω' })).toContainText('Bench meter');
  await expect(page.getByText('On disk')).toBeVisible();
  await app.kill();
  app = await startApp(app.folder);
  await openJob('STOCK 5001');
  await begin('Ohms');
  await form()
    .getByRole('button', { name: /^Meter and note/ })
    .click();
  await expect(form().getByLabel('Meter', { exact: true })).toHaveValue('Bench meter');
  await form().getByRole('button', { name: 'Change' }).click();
  await expect(form().getByLabel('Beep at, Ω')).toHaveValue('35');
  await page.keyboard.press('Escape');
});

test('the test to do first is read, acknowledged, and its reading comes filled in', async () => {
  await newJob('Brannock', 'STOCK 5002', 'Left tail feed');
  const panel = page.getByRole('region', { name: 'Test first' });
  await expect(panel).toContainText(/saves\s*[\d.]+\s*min/, ranked);
  await panel.getByRole('button', { name: 'What it would tell' }).click();
  await expect(panel).toContainText(/\(\d+ %\): begin with .+; found after about \d+ min\./);
  await panel.getByRole('button', { name: 'Enter the reading' }).first().click();
  // A caution that can hurt comes before the form, once in each job.
  await expect(form()).toBeHidden();
  await panel.getByRole('button', { name: /read and understood/ }).click();
  await panel.getByRole('button', { name: 'Enter the reading' }).first().click();
  await expect(form().getByLabel('Test', { exact: true })).toHaveValue('move');
  await expect(form().getByLabel('Tries')).toHaveValue('10');
  await form().getByLabel('Changed').fill('0');
  await keep();
  await showLedger();
  await expect(ledgerLines()).toHaveCount(1);
  await expect(ledgerLines().first()).toContainText('changed 0 of 10');
});

test('with the keyboard alone a reading is entered, put right and taken back', async () => {
  await page.keyboard.press('r');
  await form().getByLabel('Test', { exact: true }).focus();
  await page.keyboard.type('Ohms');
  await expect(form().getByLabel('Test', { exact: true })).toBeFocused();
  for (let i = 0; i < 3; i++) await page.keyboard.press('Tab');
  await expect(form().getByLabel('Meter shows, Ω')).toBeFocused();
  await page.keyboard.type('4k7');
  await page.keyboard.press('Enter');
  await expect(form()).toBeHidden();
  const line = ledgerLines().filter({ hasText: '4.7 kΩ' });
  await line.getByRole('button', { name: /^Put right/ }).focus();
  await page.keyboard.press('Enter');
  await expect(form().getByLabel('Meter shows, Ω')).toHaveValue('4700');
  await page.keyboard.press('Escape');
  await line.getByRole('button', { name: /^Take back/ }).focus();
  await page.keyboard.press('Enter');
  await expect(line).toHaveCount(0);
  // Taking back the newest is undoing it: redo brings it again.
  await page.keyboard.press('Control+Shift+Z');
  await expect(line).toHaveCount(1);
});

test('every form fits a small screen without scrolling in itself, and axe finds nothing in either theme', async () => {
  await page.setViewportSize({ width: 1024, height: 768 });
  for (const vehicle of ['STOCK 417', 'STOCK 582', 'STOCK 733']) {
    await openJob(vehicle);
    await page.keyboard.press('r');
    const kinds = await form().getByLabel('Test', { exact: true }).getByRole('option').allInnerTexts();
    expect(kinds).toHaveLength(8);
    for (const kind of kinds) {
      await begin(kind);
      const hidden = await form().evaluate((each) => each.scrollHeight - each.clientHeight);
      expect(hidden, `${vehicle} ${kind}`).toBeLessThanOrEqual(0);
      const wide = await form().evaluate((each) => each.scrollWidth - each.clientWidth);
      expect(wide, `${vehicle} ${kind}`).toBeLessThanOrEqual(0);
    }
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await axeFaults(page), `${vehicle} ${colorScheme}, form`).toEqual([]);
    }
    await page.keyboard.press('Escape');
    await showLedger();
    expect(await axeFaults(page), `${vehicle}, ledger`).toEqual([]);
  }
});
