import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One piece of work by others, or our own, with the terms it is used on. */
export interface Licence {
  readonly name: string;
  readonly version: string;
  /** By its SPDX name. */
  readonly licence: string;
  readonly text: string;
}

/** What the lock file says of a package; `dev` and the like are set for what only contributors need. */
interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly devOptional?: boolean;
}

/**
 * The licences of everything a user gets: our own, every package the program is made of, and what comes with
 * the desktop window. In the order of names, from the lock file and the packages' own texts, so that the
 * same packages always give the same list.
 */
export function collectLicences(projectFolder: string): readonly Licence[] {
  const { packages } = JSON.parse(readFileSync(join(projectFolder, 'package-lock.json'), 'utf8')) as {
    packages: Readonly<Record<string, Locked>>;
  };
  const used = Object.entries(packages)
    .filter(([path, { dev, optional, devOptional }]) => path !== '' && !dev && !optional && !devOptional)
    .map(([path, locked]) => licenceOf(projectFolder, path, locked));
  const electron = 'node_modules/electron';
  const window = [licenceOf(projectFolder, electron, packages[electron] ?? {}, 'Electron (desktop window)')];
  return [ownLicence(projectFolder, packages[''] ?? {}), ...[...used, ...window, ...told].sort(byName)];
}

const byName = (a: Licence, b: Licence): number => {
  const [first, second] = [`${a.name} ${a.version}`.toLowerCase(), `${b.name} ${b.version}`.toLowerCase()];
  return first < second ? -1 : first > second ? 1 : 0;
};

/** What has no package of its own here. */
const told: readonly Licence[] = [
  {
    name: 'Chromium and Node.js (desktop window)',
    version: '',
    licence: 'BSD-3-Clause, MIT and others',
    text: 'The desktop window is made with Chromium and Node.js. The licences of everything in them lie beside the program, in LICENSES.chromium.html. Where Undertrim runs in a browser window instead, that browser brings its own.',
  },
  {
    name: 'SQLite',
    version: '',
    licence: 'Public domain',
    text: 'Maps and jobs are kept with SQLite, which its authors have given to the public domain. It comes as part of better-sqlite3.',
  },
];

function ownLicence(projectFolder: string, { version = '', license = '' }: Locked): Licence {
  const text = tidied(readFileSync(join(projectFolder, 'LICENSE'), 'utf8'));
  return { name: 'Undertrim', version, licence: license, text };
}

function licenceOf(
  projectFolder: string,
  path: string,
  { version = '', license = '' }: Locked,
  name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
): Licence {
  const folder = join(projectFolder, path);
  const file = readdirSync(folder)
    .sort()
    .find((each) => /^(licen[cs]e|copying)(\.(md|txt))?$/i.test(each));
  if (!file || !license)
    throw new Error(`${path} comes without its licence; find out on what terms it is used.`);
  return { name, version, licence: license, text: tidied(readFileSync(join(folder, file), 'utf8')) };
}

/** One way of ending lines and nothing at their ends, so that a list compares. */
const tidied = (text: string): string =>
  text
    .replaceAll('\r\n', '\n')
    .replaceAll(/[ \t]+$/gm, '')
    .trim();
