import { readFileSync } from 'node:fs';
import { type Download, expect, type Locator, type Page, test } from '@playwright/test';
import { type AppHost, startApp } from './app-host.ts';
import { axeFaults } from './axe-faults.ts';
import { drawingHand, type Place } from './drawing-hand.ts';
import { brokenText, verbsText } from './verbs-map.ts';

test.describe.configure({ mode: 'serial', timeout: 300_000 });

let app: AppHost;
let page: Page;

test.beforeAll(async ({ browser }) => {
  app = await startApp();
  const context = await browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'] });
  page = await context.newPage();
  await page.goto(app.address);
});

test.afterAll(async () => {
  await page.close();
  await app.end();
});

const button = (name: string | RegExp): Locator => page.getByRole('button', { name, exact: true });
const field = (label: string): Locator => page.locator('.side-column').getByLabel(label, { exact: true });
const hand = () => drawingHand(page);
const press = (key: string): Promise<void> => page.keyboard.press(key);
const details = (): Locator => page.locator('.details');

/** Puts the keyboard on the board without picking anything. */
const toBoard = (): Promise<void> => hand().board.focus();

/** Waits until everything is on disk. */
const stored = async (): Promise<void> => {
  await page.waitForTimeout(600);
  await expect(page.locator('.draw-status')).toHaveAttribute('data-saving', 'saved');
};

/** One press, and time enough that the next is not a double one. */
async function pressAt(place: Place): Promise<void> {
  await hand().press(place);
  await page.waitForTimeout(450);
}

/** Picks things on the board, the first alone and the others with it. */
async function pick(...places: readonly Place[]): Promise<void> {
  for (const [index, place] of places.entries()) {
    if (index > 0) await page.keyboard.down('Shift');
    await pressAt(place);
    if (index > 0) await page.keyboard.up('Shift');
  }
}

const count = async (list: string): Promise<number> => {
  await page.getByRole('tab', { name: 'List', exact: true }).click();
  const lines = await page.getByRole('region', { name: list, exact: true }).getByRole('listitem').count();
  await page.getByRole('tab', { name: 'Details', exact: true }).click();
  return lines;
};

const file = (name: string, text: string | Buffer): { name: string; mimeType: string; buffer: Buffer } => ({
  name,
  mimeType: name.endsWith('zip') ? 'application/zip' : 'application/json',
  buffer: Buffer.from(text),
});

const burr1: Place = [200, -300];
const burr2: Place = [500, -400];
const burr3: Place = [1_100, -350];

test('a broken file is refused with every place and reason, and a good one is stored only when told to', async () => {
  await button('Bring in a file').click();
  const choose = page.locator('.card-form input[type=file]');
  await choose.setInputFiles(file('broken.map.json', brokenText));
  const form = page.getByRole('region', { name: 'Bring in a file' });
  await expect(form).toContainText('broken.map.json is not brought in; nothing was stored.');
  await expect(form).toContainText('panel:none');
  await expect(form).toContainText('900 mm lies beyond the end of the run');
  await choose.setInputFiles(file('words.json', 'no map at all'));
  await expect(form).toContainText(
    'words.json is not brought in; nothing was stored.It is damaged or cut short.',
  );
  await choose.setInputFiles(file('verbs.map.json', verbsText));
  await expect(form).toContainText('Vehicle map “Pellow Ardent, small van”');
  await expect(form).toContainText('3 runs, 2 panels, 1 circuit.');
  await expect(form).toContainText('Nothing is stored yet.');
  await expect(page.locator('.map-face', { hasText: 'Pellow' })).toHaveCount(0);
  expect(await axeFaults(page)).toEqual([]);
  await button('Keep it').click();
  await page.locator('.map-face', { hasText: 'Pellow' }).click();
  await hand().board.waitFor();
  await page.waitForTimeout(500);
});

test('several panels are changed at once, what differs is said, and one undo takes it back on all', async () => {
  await hand().drag([150, 520], [1_200, 200]);
  await expect(details()).toContainText('2 panels');
  await expect(field('Minutes off')).toHaveAttribute('placeholder', 'differs');
  await expect(field('Kind')).toHaveValue('');
  await expect(page.getByLabel('Glass (differs)')).toBeVisible();
  expect(await axeFaults(page)).toEqual([]);
  await field('Minutes off').fill('9');
  await expect(field('Minutes off')).toHaveValue('9');
  await page.getByLabel('Glass (differs)').check();
  await page.getByLabel('One-use clips').check();
  await stored();
  await pressAt([950, 350]);
  await expect(field('Minutes off')).toHaveValue('9');
  await expect(page.getByLabel('One-use clips')).toBeChecked();
  await toBoard();
  for (let i = 0; i < 3; i++) await press('Control+z');
  await page.waitForTimeout(300);
  await pressAt([350, 350]);
  await expect(field('Minutes off')).toHaveValue('3');
  await pressAt([950, 350]);
  await expect(field('Minutes off')).toHaveValue('15');
  await toBoard();
  await press('Control+Shift+z');
  await pressAt([350, 350]);
  await expect(field('Minutes off')).toHaveValue('9');
});

test('things of several kinds show each kind apart, and a kind is changed as one', async () => {
  await hand().drag([-40, 90], [1_540, -440]);
  await expect(details()).toContainText('things are picked');
  for (const kind of ['3 runs', '4 plugs and parts', '3 rub spots']) await expect(button(kind)).toBeVisible();
  await button('3 rub spots').click();
  await page.getByRole('radio', { name: 'Severe' }).check();
  await expect(page.getByRole('radio', { name: 'Severe' })).toBeChecked();
  await pressAt(burr1);
  await expect(page.getByRole('radio', { name: 'Severe' })).toBeChecked();
  await toBoard();
  await press('Control+z');
  await pressAt(burr1);
  await expect(page.getByRole('radio', { name: 'Slight' })).toBeChecked();
  await pressAt(burr3);
  await expect(page.getByRole('radio', { name: 'Severe' })).toBeChecked();
});

test('a long burst of typing in a note is one step of the history, here and after a power cut', async () => {
  await pressAt(burr2);
  await typeWithoutPause(field('Note'), 'A burr left from the spot welder, hidden by the carpet edge');
  await stored();
  await toBoard();
  await press('Control+z');
  await expect(field('Note')).toHaveValue('');
  await press('Control+Shift+z');
  await expect(field('Note')).toHaveValue(/carpet edge$/);
  await stored();
  await restart();
  await pressAt(burr2);
  await expect(field('Note')).toHaveValue(/carpet edge$/);
  await toBoard();
  await press('Control+z');
  await expect(field('Note')).toHaveValue('');
  await press('Control+Shift+z');
  await expect(field('Note')).toHaveValue(/carpet edge$/);
});

test('rub spots are copied to the pointer, duplicated beside, and taken back', async () => {
  const before = await count('Rub spots');
  await pick(burr1, burr2);
  await expect(details()).toContainText('2 rub spots');
  await press('Control+c');
  await expect(page.locator('.side-column')).toContainText('2 things copied.');
  await hand().hover([900, -600]);
  await press('Control+v');
  await expect(details()).toContainText('2 rub spots');
  expect(await count('Rub spots')).toBe(before + 2);
  // The middle of the two lies where the pointer was.
  await pressAt([750, -550]);
  await expect(field('Name')).toHaveValue('Burr 1');
  await toBoard();
  await press('Control+z');
  expect(await count('Rub spots')).toBe(before);
  await press('Control+Shift+z');
  expect(await count('Rub spots')).toBe(before + 2);
  await pressAt(burr3);
  await press('Control+d');
  expect(await count('Rub spots')).toBe(before + 3);
  await pressAt([1_180, -430]);
  await expect(field('Name')).toHaveValue('Burr 3');
  await toBoard();
  await press('Control+z');
  await press('Control+z');
  expect(await count('Rub spots')).toBe(before);
});

test('what was copied elsewhere is refused in plain words, and things cross to another map', async () => {
  await page.evaluate(() => navigator.clipboard.writeText('buy more tape'));
  await toBoard();
  await press('Control+v');
  await expect(page.locator('.side-column')).toContainText('was not copied from a drawing');
  await pressAt([250, 0]);
  await expect(details()).toContainText('front');
  await press('Control+c');
  await stored();
  await button('Back to vehicles and jobs').click();
  await button('New map').click();
  await page.getByLabel('Name of the map').fill('Empty Cobble');
  await button('Make the map and draw').click();
  await hand().board.waitFor();
  await test.step('no car is drawn from figures that are missing, wrong or at odds', async () => {
    const first = page.getByRole('region', { name: 'Begin with the outlines of the car' });
    const length = first.getByLabel('Length, bumper to bumper');
    await length.fill('');
    await first.getByLabel('Width without mirrors').fill('17x');
    await first.getByRole('button', { name: 'Draw the outlines' }).click();
    await expect(first.getByText('Enter a number from 1000 to 20000.')).toBeVisible();
    await expect(length).toBeFocused();
    await expect(first.getByLabel('Width without mirrors')).toHaveValue('17x');
    await first.getByLabel('Width without mirrors').fill('1750');
    await length.fill('2400');
    await first.getByRole('button', { name: 'Draw the outlines' }).click();
    await expect(first.getByText(/does not fit a car 2400 mm long/)).toBeVisible();
    await first.getByRole('combobox', { name: 'Body' }).selectOption('Van');
    await expect(length).toHaveValue('2400');
    const bar = await page.locator('.tool-bar').boundingBox();
    const sheet = await first.boundingBox();
    expect(sheet?.y).toBeGreaterThan((bar?.y ?? 0) + (bar?.height ?? 0));
  });
  await toBoard();
  await press('Control+v');
  expect(await count('Runs')).toBe(1);
  expect(await count('Plugs and parts')).toBe(2);
  await stored();
  await button('Back to vehicles and jobs').click();
  await page.locator('.map-face', { hasText: 'Pellow' }).click();
  await hand().board.waitFor();
  await page.waitForTimeout(500);
});

test('a smaller window shows the same car, the key clear of the bar, and a larger one is as before', async () => {
  const { board, key, seen } = hand();
  const large = page.viewportSize() ?? { width: 1280, height: 720 };
  await toBoard();
  await key('f');
  const look = await board.getAttribute('data-camera-px-per-mm');
  await page.setViewportSize({ width: 1024, height: 600 });
  await expect(board).not.toHaveAttribute('data-camera-px-per-mm', look ?? '');
  for (const place of [burr1, burr2, burr3]) expect(await seen(place)).toBe(true);
  await button('Key to the marks').click();
  const bar = await page.locator('.tool-bar').boundingBox();
  const sheet = await page.locator('.marks-key-sheet').boundingBox();
  expect(sheet?.y).toBeGreaterThan((bar?.y ?? 0) + (bar?.height ?? 0));
  await button('Close the key').click();
  await page.setViewportSize(large);
  await expect(board).toHaveAttribute('data-camera-px-per-mm', look ?? '');
});

test('rub spots are lined up by button and by key, and spread evenly', async () => {
  const x = async (place: Place): Promise<string> => {
    await pressAt(place);
    return (await page.locator('.details').getAttribute('data-picked')) ?? '';
  };
  await pick(burr1, burr2, burr3);
  await button('Left edges').click();
  expect(await x([200, -400])).toContain('spot1');
  expect(await x([1_100, -400])).toContain('spot3');
  await toBoard();
  await press('Control+z');
  expect(await x(burr1)).toContain('spot1');
  await pick(burr1, burr2, burr3);
  await press('Control+Shift+ArrowUp');
  expect(await x([500, -300])).toContain('spot2');
  await toBoard();
  await press('Control+z');
  await pick(burr1, burr2, burr3);
  await button('Evenly, front to rear').click();
  expect(await x([650, -400])).toContain('spot2');
  await toBoard();
  await press('Control+z');
  expect(await x(burr2)).toContain('spot2');
});

test('a thing is found by a few letters of its name, with the keyboard alone', async () => {
  await toBoard();
  await press('Control+f');
  const box = page.getByRole('search', { name: 'Find on the map' });
  await page.keyboard.type('seat');
  await expect(box.getByRole('option')).not.toHaveCount(0);
  await expect(box.getByRole('option').first()).toContainText(/^Seat/);
  expect(await axeFaults(page)).toEqual([]);
  await press('ArrowDown');
  await press('ArrowDown');
  await expect(box.getByRole('option', { selected: true })).toHaveCount(1);
  const name = await box.getByRole('option', { selected: true }).locator('span').first().textContent();
  await expect(details().getByRole('heading', { level: 2 }).first()).toHaveText(name ?? '');
  await page.getByRole('combobox').first().fill('burr 3');
  await press('Enter');
  await expect(box).toHaveCount(0);
  await expect(field('Name')).toHaveValue('Burr 3');
  await press('Control+f');
  await page.keyboard.type('nowhere');
  await expect(box).toContainText('Nothing on this map has “nowhere”');
  await press('Escape');
  await expect(box).toHaveCount(0);
});

test('two states are compared: each difference is listed, and each line leads there', async () => {
  await hand().drag([-40, 90], [1_540, -440]);
  await press('Delete');
  const ask = page.locator('.notice-caution');
  await expect(ask).toContainText('Seat switch is no longer traced');
  await expect(ask).toContainText('and 5 more');
  await ask.getByRole('button', { name: 'Cancel' }).click();
  await pressAt(burr3);
  await press('Delete');
  await pressAt([950, 350]);
  await field('Name').fill('Driver seat');
  await stored();
  await hand().drag([1_500, 0], [1_500, 120]);
  await hand().take('Rub spot');
  await pressAt([1_300, -500]);
  await press('Escape');
  await press('Escape');
  await stored();
  await button('Compare, hand out, bring in').click();
  const column = page.locator('.map-task');
  const list = (name: string): Locator => column.getByRole('region', { name, exact: true });
  await expect(column).toContainText('1 added, 1 moved, 3 changed, 1 removed');
  await expect(list('Moved')).toContainText('Seat switch');
  await expect(list('Moved')).toContainText('120 mm');
  await expect(list('Changed')).toContainText('Driver seat');
  await expect(list('Removed')).toContainText('Burr 3');
  expect(await axeFaults(page)).toEqual([]);
  await page.screenshot({ path: 'tests/results/app/compare.png' });
  await list('Moved').getByRole('button').click();
  await expect(column.getByRole('button', { pressed: true })).toContainText('Seat switch');
  const far = await hand().board.getAttribute('data-camera-x-px');
  await hand().board.focus();
  for (let i = 0; i < 12; i++) await press('ArrowRight');
  expect(await hand().board.getAttribute('data-camera-x-px')).not.toBe(far);
  await list('Removed').getByRole('button').click();
  const seen = await hand().seen(burr3);
  expect(seen).toBe(true);
});

test('the map is handed out as document, bundle and drawings', async () => {
  await page.getByRole('tab', { name: 'Hand out' }).click();
  expect(await axeFaults(page)).toEqual([]);
  const document = await download('Hand it out: Map as a document');
  const text = readFileSync(await document.path(), 'utf8');
  expect(document.suggestedFilename()).toBe('pellow-ardent-small-van.map.json');
  expect(JSON.parse(text)).toMatchObject({ format: 'undertrim.map', id: 'map:verbs' });
  expect(text).toContain('Driver seat');
  await expect(page.locator('.map-task')).toContainText('pellow-ardent-small-van.map.json is handed out.');

  const svg = await download('Hand it out: Drawing');
  const drawing = readFileSync(await svg.path(), 'utf8');
  expect(drawing).toContain('<svg xmlns="http://www.w3.org/2000/svg"');
  expect(drawing).toContain('Driver seat');

  await page.getByRole('radio', { name: /PNG/ }).check();
  await page.getByRole('radio', { name: 'Chosen width' }).check();
  await page.getByRole('textbox', { name: 'Width' }).fill('1234');
  const png = readFileSync(await (await download('Hand it out: Drawing')).path());
  // Width and height stand after the signature and the head of the first chunk (W3C PNG 11.2.2).
  expect(png.readUInt32BE(16)).toBe(1_234);
  await page.getByRole('radio', { name: /^Full/ }).check();
  const full = readFileSync(await (await download('Hand it out: Drawing')).path());
  expect(full.readUInt32BE(16)).toBeGreaterThan(1_500);

  const packing = '**/request/file.handOutBundle';
  let goOn = (): void => {};
  const heldUp = new Promise<void>((resolve) => {
    goOn = resolve;
  });
  await page.route(packing, async (route) => {
    await heldUp;
    await route.continue();
  });
  await button('Hand it out: Map with its pictures').click();
  await expect(page.locator('.map-task')).toContainText('Packing map and pictures');
  await button('Stop').click();
  const late = page.waitForResponse(packing);
  goOn();
  await (await late).finished();
  await expect(page.locator('.map-task')).toContainText('Stopped; no file was written.');
  await page.unroute(packing);

  const bundle = await download('Hand it out: Map with its pictures');
  const zip = readFileSync(await bundle.path());
  expect(zip.subarray(0, 2).toString()).toBe('PK');

  await page.getByRole('tab', { name: 'Bring in' }).click();
  const choose = page.locator('.map-task input[type=file]');
  await choose.setInputFiles(file('own.undertrim.zip', zip));
  await expect(page.locator('.map-task')).toContainText('The very same is here already');
  await expect(button('Keep it')).toHaveCount(0);
  await button('Choose another file').click();
  await choose.setInputFiles(file('torn.undertrim.zip', zip.subarray(0, zip.length - 200)));
  await expect(page.locator('.map-task')).toContainText('torn.undertrim.zip is not brought in');
  const ours = JSON.parse(text) as { revision: number; details: object };
  const details = { ...ours.details, name: 'Pellow Ardent, drawn further' };
  const theirs = JSON.stringify({ ...ours, revision: ours.revision + 1, details });
  await choose.setInputFiles(file('verbs.map.json', theirs));
  await expect(page.getByRole('radio', { name: 'Both' })).toBeChecked();
  await expect(page.locator('.map-task')).toContainText('stored beside yours');
  expect(await axeFaults(page)).toEqual([]);
  await button('Keep it').click();
  await button('Open it').click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Pellow Ardent, drawn further');
  await expect(page).not.toHaveURL(/map:verbs/);
});

test('everything done is there after a power cut, and can still be taken back', async () => {
  await button('Back to vehicles and jobs').click();
  await page.locator('.map-face', { hasText: 'Pellow' }).first().waitFor();
  await page.goto(`${page.url().split('#')[0]}#/map/map:verbs`);
  await hand().board.waitFor();
  await page.waitForTimeout(500);
  await restart();
  const before = await count('Rub spots');
  expect(before).toBe(3);
  await toBoard();
  for (let i = 0; i < 60; i++) await press('Control+z');
  await stored();
  expect(await count('Rub spots')).toBe(3);
  await press('?');
  const sheet = page.getByRole('region', { name: 'Keys on the board' });
  for (const key of ['Ctrl + C', 'Ctrl + V', 'Ctrl + D', 'Ctrl + F', 'Ctrl + A']) {
    await expect(sheet).toContainText(key);
  }
  await press('Escape');
  await expect(button('Undo')).toBeDisabled();
  await toBoard();
  await press('f');
  await pressAt(burr3);
  await expect(field('Name')).toHaveValue('Burr 3');
  await pressAt([950, 350]);
  await expect(field('Name')).toHaveValue('Front seat');
});

async function download(name: string): Promise<Download> {
  const [file] = await Promise.all([page.waitForEvent('download'), button(name).click()]);
  return file;
}

/** Types for some seconds without a pause, by the page's own clock: a busy machine must not put one in. */
async function typeWithoutPause(into: Locator, text: string): Promise<void> {
  await into.focus();
  await page.clock.install();
  await page.clock.pauseAt(Date.now() + 60_000);
  for (const letter of text) {
    await page.keyboard.type(letter);
    await page.clock.runFor(60);
  }
  await page.clock.resume();
}

/** Cuts the power and starts again on the same data, at the same map. */
async function restart(): Promise<void> {
  const { folder } = app;
  const at = new URL(page.url()).hash;
  await app.kill();
  app = await startApp(folder);
  await page.goto(app.address);
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, at);
  await hand().board.waitFor();
  await page.waitForTimeout(500);
}
