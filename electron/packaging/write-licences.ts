import { writeFileSync } from 'node:fs';
import { projectFolder } from '../build/project-folder.ts';
import { collectLicences } from './collect-licences.ts';
import { licenceFile } from './licence-file.ts';

/** `npm run licences`: writes the list of licences the app shows anew, after packages have changed. */
const licences = collectLicences(projectFolder);
writeFileSync(licenceFile, `${JSON.stringify(licences, null, 2)}\n`);
console.log(`${licences.length} licences`);
