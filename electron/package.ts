import { join } from 'node:path';
import { archFromString, Platform, build as pack } from 'electron-builder';
import { projectFolder } from './build/project-folder.ts';
import { build } from './build.ts';
import { desktopProgramFolder } from './desktop/start-desktop.ts';
import { packageConfig } from './packaging/package-config.ts';

/**
 * `npm run package -- [--dir]`: packs the desktop program for this system and processor into
 * electron/built/packages; with `--dir` as a plain folder, without an installer.
 */
async function packHere(asFolder: boolean): Promise<number> {
  const machine = `${process.platform}-${process.arch}`;
  const program = desktopProgramFolder();
  if (!program) {
    console.error(
      `Packing needs the desktop window's program (Electron) for ${machine}, and it is neither here nor to be fetched.\n` +
        'Connect to the network and run this again, or unpack that program yourself and name its folder in ELECTRON_OVERRIDE_DIST_PATH.',
    );
    return 1;
  }
  await build();
  try {
    const made = await pack({
      projectDir: projectFolder,
      config: { ...packageConfig, electronDist: program },
      targets: Platform.current().createTarget(asFolder ? 'dir' : null, archFromString(process.arch)),
      publish: 'never',
    });
    const folder = join(projectFolder, packageConfig.directories?.output ?? '');
    console.log(made.length > 0 ? made.join('\n') : `The program lies in ${folder}`);
    return 0;
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    console.error(
      `The packing stopped there. Installers need tools that are fetched over the network once; without one, "npm run package -- --dir" gives the program as a folder.`,
    );
    return 1;
  }
}

process.exitCode = await packHere(process.argv.includes('--dir'));
