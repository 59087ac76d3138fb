import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { _electron } from 'playwright';
import { projectFolder } from '#electron/build/project-folder.ts';
import { desktopHindrance, desktopProgram } from '#electron/desktop/start-desktop.ts';

const program = desktopProgram();
const hindrance = program
  ? desktopHindrance(process.platform, process.env, process.getuid?.())
  : 'the desktop window’s program is not on this machine';

test('the desktop window opens on the start place, isolated and without a network', async () => {
  test.skip(hindrance !== null, `Not run: ${hindrance}.`);
  const data = mkdtempSync(join(tmpdir(), 'undertrim-desktop-'));
  const desktop = await _electron.launch({
    executablePath: program ?? '',
    args: [projectFolder, `--data=${data}`],
  });
  try {
    const page = await desktop.firstWindow();
    await expect(page).toHaveTitle('Undertrim');
    expect(page.url()).toBe('undertrim://page/');
    const seen = await page.evaluate(async () => ({
      doors: Object.keys(window).filter((name) => ['require', 'process', 'undertrim'].includes(name)),
      reached: await fetch('http://127.0.0.1:9/').then(
        () => true,
        () => false,
      ),
      window: window.open('https://workshop.example'),
    }));
    expect(seen).toEqual({ doors: ['undertrim'], reached: false, window: null });
    await expect(page.locator('#app')).not.toBeEmpty();
  } finally {
    await desktop.close();
    rmSync(data, { recursive: true, force: true });
  }
});
