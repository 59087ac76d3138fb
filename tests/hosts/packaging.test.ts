import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { extractFile, listPackage } from '@electron/asar';
import { Arch, build, type Configuration, Platform } from 'electron-builder';
import { describe, expect, test } from 'vitest';
import { readPictureHeader } from '#core/map/picture-header.ts';
import { projectFolder } from '#electron/build/project-folder.ts';
import { icnsFile, icoFile, iconSidesPx } from '#electron/packaging/icon-files.ts';
import { packageConfig } from '#electron/packaging/package-config.ts';
import { freshFolder } from './fresh-folder.ts';

const driver = 'node_modules/better-sqlite3';
const systems = ['darwin', 'linux', 'linuxmusl', 'win32'].flatMap((system) => [
  `${system}-x64`,
  `${system}-arm64`,
]);

/** Writes small files, so that a test can see which of them are taken along. */
function put(folder: string, ...paths: readonly string[]): void {
  for (const path of paths) {
    mkdirSync(join(folder, dirname(path)), { recursive: true });
    writeFileSync(join(folder, path), `${path}\n`);
  }
}

/** A project laid out like ours, with something of everything that has no place in a package. */
function standInProject(): string {
  const folder = freshFolder();
  const { version } = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8'));
  put(
    folder,
    'LICENSE',
    'README.md',
    'tsconfig.json',
    '.gitignore',
    'core/map/read-map.ts',
    'db/schema.sql',
    'electron/start.ts',
    'electron/desktop/main.ts',
    'electron/built/desktop/main.js',
    'electron/built/desktop/preload.cjs',
    'electron/built/desktop/store-thread.js',
    'electron/built/packages/old/undertrim',
    'renderer/main.tsx',
    'renderer/built/index.html',
    'renderer/built/assets/index.js',
    'sample-vehicles/hatch.map.json',
    'sample-vehicles/FORMAT.md',
    'tests/hosts/packaging.test.ts',
    'tests/results/app/shot.png',
    'undertrim.log',
    ...[
      'lib/index.js',
      'lib/binding.js',
      'LICENSE',
      'README.md',
      'binding.gyp',
      'deps/sqlite3/sqlite3.c',
      'src/addon.cpp',
    ].map((path) => `${driver}/${path}`),
    ...systems.map((system) => `${driver}/prebuilds/${system}.node`),
    'node_modules/react/index.js',
    'node_modules/@fontsource/b612/index.css',
    'node_modules/vitest/index.js',
  );
  cpSync(join(projectFolder, 'electron/packaging'), join(folder, 'electron/packaging'), { recursive: true });
  const described = (path: string, more: object): void =>
    writeFileSync(join(folder, path, 'package.json'), JSON.stringify({ version: '1.0.0', ...more }));
  described(driver, { name: 'better-sqlite3', main: 'lib/index.js' });
  for (const name of ['react', '@fontsource/b612', 'vitest']) described(`node_modules/${name}`, { name });
  described('', {
    name: 'undertrim',
    type: 'module',
    version,
    main: 'electron/built/desktop/main.js',
    description: 'stand-in',
    dependencies: { 'better-sqlite3': '1.0.0', react: '1.0.0', '@fontsource/b612': '1.0.0' },
    devDependencies: { vitest: '1.0.0' },
  });
  return folder;
}

/** The mark before a program's fuses (electron/fuses), then version, count and one letter for each fuse. */
const fuseMark = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';

/** Something that looks like the desktop's program to the packer: it has fuses that can be set. */
function standInProgram(): string {
  const folder = freshFolder();
  put(folder, 'locales/en-US.pak', 'locales/de.pak', 'LICENSE', 'LICENSES.chromium.html');
  const fuses = Buffer.concat([Buffer.from(fuseMark), Buffer.from([1, 8]), Buffer.from('10111000')]);
  writeFileSync(
    join(folder, 'electron'),
    Buffer.concat([Buffer.alloc(500, 1), fuses, Buffer.alloc(500, 2)]),
    {
      mode: 0o755,
    },
  );
  return folder;
}

async function pack(changes: Partial<Configuration> = {}): Promise<string> {
  const output = freshFolder();
  await build({
    projectDir: standInProject(),
    config: {
      // The packer writes into what it is given.
      ...structuredClone(packageConfig),
      electronDist: standInProgram(),
      electronVersion: '45.4.1',
      directories: { ...packageConfig.directories, output },
      ...changes,
    },
    targets: Platform.LINUX.createTarget('dir', Arch.x64),
    publish: 'never',
  });
  return join(output, 'linux-unpacked');
}

describe('the packed program', () => {
  test('holds what is built, the licences and the driver’s one compiled part, and nothing of the sources or tests', async () => {
    const packed = await pack();
    const resources = join(packed, 'resources');
    const files = listPackage(join(resources, 'app.asar'), { isPack: false })
      .map((path) => path.replaceAll('\\', '/').slice(1))
      .filter((path) => /\.[a-z]+$|LICENSE$/.test(path));
    expect(files.sort()).toEqual(
      [
        'LICENSE',
        'electron/built/desktop/main.js',
        'electron/built/desktop/preload.cjs',
        'electron/built/desktop/store-thread.js',
        `${driver}/LICENSE`,
        `${driver}/lib/binding.js`,
        `${driver}/lib/index.js`,
        `${driver}/package.json`,
        `${driver}/prebuilds/linux-x64.node`,
        'package.json',
        'renderer/built/assets/index.js',
        'renderer/built/index.html',
        'sample-vehicles/hatch.map.json',
      ].sort(),
    );
    const told = JSON.parse(extractFile(join(resources, 'app.asar'), 'package.json').toString());
    expect(told).toMatchObject({ type: 'module', main: 'electron/built/desktop/main.js' });
    expect(Object.keys(told)).not.toContain('devDependencies');
    expect(readdirSync(join(resources, 'app.asar.unpacked', driver, 'prebuilds'))).toEqual([
      'linux-x64.node',
    ]);
    expect(existsSync(join(resources, 'app.asar.unpacked', driver, 'lib'))).toBe(false);
    expect(existsSync(join(resources, 'app-update.yml'))).toBe(false);
    expect(readdirSync(packed)).toContain('LICENSES.chromium.html');

    const program = readFileSync(join(packed, 'undertrim'));
    const at = program.indexOf(fuseMark) + fuseMark.length + 2;
    // Run as Node, cookie encryption, NODE_OPTIONS, --inspect, archive integrity, archive only, own snapshot, file privileges.
    expect(program.subarray(at, at + 8).toString()).toBe('01001100');
  }, 60_000);

  test('is described as the packer’s own schema asks, and a slip in the description is noticed', async () => {
    const slip = { asarIntegrityy: true } as Partial<Configuration>;
    await expect(pack(slip)).rejects.toThrow(/asarIntegrityy/);
    await expect(pack({ electronFuses: { runAsNode: 'no' } as never })).rejects.toThrow(/runAsNode/);
  }, 60_000);

  test('sends nothing, updates nothing and sets every fuse', () => {
    expect(packageConfig.publish).toBeNull();
    expect(packageConfig.dmg?.writeUpdateInfo).toBe(false);
    expect(packageConfig.nsis?.differentialPackage).toBe(false);
    expect(packageConfig.electronFuses).toMatchObject({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      loadBrowserProcessSpecificV8Snapshot: false,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  test('finds its driver: every system’s compiled part is where the description looks for it', () => {
    const real = readdirSync(join(projectFolder, driver, 'prebuilds'));
    expect(real.sort()).toEqual(systems.map((system) => `${system}.node`).sort());
    expect(existsSync(join(projectFolder, driver, 'lib/index.js'))).toBe(true);
  });
});

describe('the icon', () => {
  const folder = join(projectFolder, 'electron/packaging');
  const pictures = iconSidesPx.map((sidePx) => ({
    sidePx,
    png: readFileSync(join(folder, `icons/${sidePx}x${sidePx}.png`)),
  }));

  test('is there in every size, each as large as its name says', () => {
    for (const { sidePx, png } of pictures) {
      expect(readPictureHeader(png)).toEqual({ mediaType: 'image/png', widthPx: sidePx, heightPx: sidePx });
    }
  });

  test('stands in the files of Windows and macOS picture for picture', () => {
    expect(readFileSync(join(folder, 'icon.ico')).equals(icoFile(pictures))).toBe(true);
    expect(readFileSync(join(folder, 'icon.icns')).equals(icnsFile(pictures))).toBe(true);
    const ico = icoFile(pictures);
    const sides = Array.from({ length: ico.readUInt16LE(4) }, (_, i) => {
      const at = 6 + 16 * i;
      const from = ico.readUInt32LE(at + 12);
      const picture = ico.subarray(from, from + ico.readUInt32LE(at + 8));
      expect(readPictureHeader(picture)?.widthPx).toBe(ico.readUInt8(at) || 256);
      return ico.readUInt8(at) || 256;
    });
    expect(sides).toEqual([16, 32, 48, 64, 128, 256]);
    const icns = icnsFile(pictures);
    const types: string[] = [];
    for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4)) {
      types.push(icns.toString('latin1', at, at + 4));
      expect(readPictureHeader(icns.subarray(at + 8))).toMatchObject({ mediaType: 'image/png' });
    }
    expect(types).toEqual(['icp4', 'icp5', 'ic11', 'ic12', 'ic07', 'ic08', 'ic13', 'ic09', 'ic14', 'ic10']);
  });
});
