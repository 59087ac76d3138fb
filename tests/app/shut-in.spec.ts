import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { pageFolder } from '#electron/build/project-folder.ts';
import { startApp } from './app-host.ts';
import { axeFaults } from './axe-faults.ts';

test('the built page names no address it could fetch, only names of formats and notes in packages’ messages', () => {
  const files = readdirSync(pageFolder, { recursive: true, encoding: 'utf8' });
  const hosts = new Map<string, Set<string>>();
  for (const file of files.filter((name) => /\.(js|css|html)$/.test(name))) {
    // Terms of use name where the work comes from.
    if (file.includes('licence-list')) continue;
    const text = readFileSync(join(pageFolder, file), 'utf8');
    for (const [, host = ''] of text.matchAll(/(?:https?|wss?):\/\/([\w.-]+)/g)) {
      const kind = file.replace(/.*\./, '');
      hosts.set(kind, (hosts.get(kind) ?? new Set()).add(host));
    }
  }
  const named = [
    'www.w3.org',
    'json-schema.org',
    'react.dev',
    'github.com',
    'konvajs.org',
    'konvajs.github.io',
  ];
  expect([...hosts.keys()]).toEqual(['js']);
  expect([...(hosts.get('js') ?? [])].filter((host) => !named.includes(host))).toEqual([]);
});

test('the licences are read by keyboard in the settings, and nothing is asked of any other place', async ({
  page,
}) => {
  const app = await startApp();
  const home = new URL(app.address).origin;
  const elsewhere: string[] = [];
  page.on('request', (request) => {
    if (!request.url().startsWith(`${home}/`)) elsewhere.push(request.url());
  });
  const refusedByPolicy: string[] = [];
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) refusedByPolicy.push(message.text());
  });
  try {
    await page.goto(app.address);
    await page.getByRole('button', { name: 'Settings' }).click();
    await page.getByRole('button', { name: 'Licences', exact: true }).focus();
    await page.keyboard.press('Enter');
    const list = page.getByRole('list', { name: 'Licences' });
    await expect(list.getByRole('listitem').first()).toContainText('Undertrim');
    await list.getByRole('button', { name: /^konva / }).focus();
    await page.keyboard.press('Enter');
    await expect(list.getByText('Permission is hereby granted')).toHaveCount(1);
    await expect(list.getByRole('button', { name: /Chromium/ })).toBeVisible();
    expect(await axeFaults(page)).toEqual([]);
    expect(elsewhere).toEqual([]);
    expect(refusedByPolicy).toEqual([]);
    // A page that would reach out is stopped by the policy that came with it.
    const reached = await page.evaluate(() =>
      fetch('http://127.0.0.1:9/').then(
        () => true,
        () => false,
      ),
    );
    expect(reached).toBe(false);
    expect(refusedByPolicy.join()).toContain('connect-src');
  } finally {
    await app.end();
  }
});
