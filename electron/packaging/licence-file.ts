import { join } from 'node:path';
import { projectFolder } from '../build/project-folder.ts';

/** The list the app shows, as `npm run licences` writes it. */
export const licenceFile = join(projectFolder, 'renderer/places/licences/licence-list.json');
