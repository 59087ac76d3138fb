import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forbiddenImports, importCycle } from './import-rules.ts';
import { keptFiles, root, type SourceFile, sourceFiles } from './source-files.ts';

const files = sourceFiles();
const own = files.filter((file) => !file.path.startsWith('tests/'));
const core = files.filter((file) => file.path.startsWith('core/'));
const linesOf = (file: SourceFile): number => file.text.split('\n').length - 1;
const isTable = (file: SourceFile): boolean =>
  /-table\.ts$/.test(file.path) || file.path.includes('/language/');

const matching = (among: readonly SourceFile[], pattern: RegExp): readonly string[] =>
  among.filter((file) => pattern.test(file.text)).map((file) => file.path);

describe('imports run one way', () => {
  test('no file imports from a room above or beside its own', () => {
    expect(forbiddenImports(files)).toEqual([]);
  });

  test('no files import each other in a ring', () => {
    expect(importCycle(files)).toBeNull();
  });

  test('the check itself notices a broken direction', () => {
    const broken = { path: 'core/map/x.ts', text: "import { a } from '#db/a.ts';", imports: ['db/a.ts'] };
    expect(forbiddenImports([broken])).toHaveLength(1);
    const upward = { path: 'core/geometry/x.ts', text: '', imports: ['core/dig/y.ts'] };
    expect(forbiddenImports([upward])).toHaveLength(1);
    const foreign = { path: 'core/map/x.ts', text: "import fs from 'node:fs';", imports: [] };
    expect(forbiddenImports([foreign])).toHaveLength(1);
  });

  test('the check itself notices a ring', () => {
    const a = { path: 'core/map/a.ts', text: '', imports: ['core/map/b.ts'] };
    const b = { path: 'core/map/b.ts', text: '', imports: ['core/map/a.ts'] };
    expect(importCycle([a, b])).toEqual(['core/map/a.ts', 'core/map/b.ts', 'core/map/a.ts']);
  });
});

describe('core stays pure', () => {
  test('core reads no clock and rolls no dice of its own', () => {
    expect(matching(core, /Math\.random|Date\.now|new Date\(|performance\.now|process\./)).toEqual([]);
  });
});

describe('the code stays readable', () => {
  test('types are never any', () => {
    expect(matching(files, /[:<]\s*any\b(?!\w)|\bas any\b/)).toEqual([]);
  });

  test('nothing is left for later on the main line', () => {
    const marker = new RegExp(`\\b(${['TO', 'DO'].join('')}|${['FIX', 'ME'].join('')})\\b`);
    expect(matching(files, marker)).toEqual([]);
  });

  test('no file or folder is a dumping ground', () => {
    const heaps = /(^|\/)(utils?|helpers?|common|misc|services?|managers?)(\/|\.tsx?$)/;
    expect(keptFiles().filter((path) => heaps.test(path))).toEqual([]);
  });

  test('file names are kebab-case', () => {
    const odd = files.filter(
      (file) => !/^[a-z0-9]+([-.][a-z0-9]+)*\.tsx?$/.test(file.path.split('/').pop() ?? ''),
    );
    expect(odd.map((file) => file.path)).toEqual([]);
  });

  test('files are small: half under 100 lines, 95 in 100 under 350, none over 500 but tables', () => {
    const sizes = own.map(linesOf).sort((a, b) => a - b);
    expect(own.filter((file) => linesOf(file) > 500 && !isTable(file)).map((file) => file.path)).toEqual([]);
    expect(sizes[Math.floor(sizes.length / 2)]).toBeLessThanOrEqual(100);
    expect(sizes[Math.floor(sizes.length * 0.95)]).toBeLessThanOrEqual(350);
  });

  test('every test file asserts something', () => {
    const tests = files.filter((file) => /\.(test|spec)\.tsx?$/.test(file.path));
    expect(tests.filter((file) => !/\bexpect\b/.test(file.text)).map((file) => file.path)).toEqual([]);
  });
});

describe('the project stands alone', () => {
  const texts = keptFiles()
    .filter((path) => /\.(tsx?|json|md|css|html|sql)$/.test(path) || path.startsWith('.'))
    .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));

  test('the top level holds what it should and nothing else', () => {
    const top = new Set(keptFiles().map((path) => path.split('/')[0] ?? ''));
    const visible = [...top].filter((name) => !name.startsWith('.')).sort();
    expect(visible).toEqual(
      [
        'DEVELOPERS.md',
        'LICENSE',
        'README.md',
        'core',
        'db',
        'electron',
        'package-lock.json',
        'package.json',
        'renderer',
        'sample-vehicles',
        'tests',
        'tsconfig.json',
      ].sort(),
    );
  });

  test('no file names a folder of one machine or the address of a package registry', () => {
    const machine = new RegExp(['"(/work|/root|/home)/', `registry\\.${'npmjs'}`, 'deb\\.debian'].join('|'));
    expect(texts.filter(({ text }) => machine.test(text)).map(({ path }) => path)).toEqual([]);
  });

  test('the renderer loads nothing from a network', () => {
    const remote = /(src|href)=["']https?:|url\(["']?https?:|@import ["']https?:/;
    expect(texts.filter(({ path, text }) => path.startsWith('renderer/') && remote.test(text))).toEqual([]);
  });

  test('only the loopback host, and the page that talks to it, know how to reach an address', () => {
    const reaching =
      /'node:(http|https|http2|net|tls|dgram|dns)(\/promises)?'|\bfetch\(|\bWebSocket\b|XMLHttpRequest|EventSource|sendBeacon|\bnet\.request\b/;
    expect(matching(own, reaching)).toEqual([
      'electron/loopback/loopback-host.ts',
      'electron/loopback/read-body.ts',
      'electron/loopback/refusal.ts',
      'renderer/session/host.ts',
    ]);
  });

  test('nothing hands an address to another program, updates itself or reports home', () => {
    const outward = /openExternal|autoUpdater|crashReporter|electron-updater|setFeedURL/;
    expect(matching(own, outward)).toEqual([]);
  });

  test('no text becomes a program or a piece of the page', () => {
    const asCode =
      /\beval\(|new Function\(|\bvm\.run|(inner|outer)HTML|dangerouslySetInnerHTML|insertAdjacentHTML|document\.write\(/;
    expect(matching(own, asCode)).toEqual([]);
  });

  test('every dependency is pinned to one version', () => {
    const pack = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const loose = Object.entries({ ...pack.dependencies, ...pack.devDependencies }).filter(
      ([, version]) => !/^\d+\.\d+\.\d+$/.test(String(version)),
    );
    expect(loose).toEqual([]);
  });
});
