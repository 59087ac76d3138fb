import { join } from 'node:path';
import { app } from 'electron';
import { dataFolder } from '../data-folder.ts';
import { runDesktop } from './run-desktop.ts';

const dataWord = '--data=';
const asked = process.argv.find((word) => word.startsWith(dataWord))?.slice(dataWord.length);
const programFolder = app.getAppPath();

void runDesktop({
  data: asked || dataFolder(),
  page: join(programFolder, 'renderer', 'built'),
  samples: join(programFolder, 'sample-vehicles'),
  preload: join(programFolder, 'electron', 'built', 'desktop', 'preload.cjs'),
});
