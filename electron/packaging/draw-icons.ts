import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright';
import { type IconPicture, icnsFile, icoFile, iconSidesPx } from './icon-files.ts';

/**
 * `npm exec -- node electron/packaging/draw-icons.ts BROWSER`: draws the icon's files anew from `icon.svg`, with
 * a Chromium or Chrome given by its path. Run it after a change to the drawing.
 */
const [executablePath] = process.argv.slice(2);
if (!executablePath) throw new Error('Give the path of Chromium or Chrome to draw with.');
const folder = import.meta.dirname;
const svg = readFileSync(join(folder, 'icon.svg'), 'utf8');
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
const pictures: IconPicture[] = [];
for (const sidePx of iconSidesPx) {
  const page = await browser.newPage({ viewport: { width: sidePx, height: sidePx } });
  await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw;height:100vh}</style>${svg}`);
  pictures.push({ sidePx, png: await page.screenshot({ omitBackground: true }) });
  await page.close();
}
await browser.close();
mkdirSync(join(folder, 'icons'), { recursive: true });
for (const { sidePx, png } of pictures) writeFileSync(join(folder, 'icons', `${sidePx}x${sidePx}.png`), png);
writeFileSync(join(folder, 'icon.ico'), icoFile(pictures));
writeFileSync(join(folder, 'icon.icns'), icnsFile(pictures));
