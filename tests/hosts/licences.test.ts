import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectFolder } from '#electron/build/project-folder.ts';
import { collectLicences } from '#electron/packaging/collect-licences.ts';
import { licenceFile } from '#electron/packaging/licence-file.ts';

const licences = collectLicences(projectFolder);

test('the list the app shows is that of the packages it is made of (npm run licences writes it anew)', () => {
  expect(JSON.parse(readFileSync(licenceFile, 'utf8'))).toEqual(licences);
});

test('every package named in package.json is in it, with a text of terms that let it be handed on', () => {
  const { dependencies } = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8'));
  const names = licences.map(({ name }) => name);
  for (const name of Object.keys(dependencies)) expect(names).toContain(name);
  expect(names[0]).toBe('Undertrim');
  expect(names.filter((name) => /Electron|Chromium|SQLite/.test(name))).toHaveLength(3);
  const free = ['MIT', 'ISC', 'OFL-1.1', 'BSD-3-Clause, MIT and others', 'Public domain'];
  for (const { name, licence, text } of licences) {
    expect(free, name).toContain(licence);
    expect(text.length, name).toBeGreaterThan(100);
  }
});
