import { useState } from 'react';
import { licenceWords } from '../../language/licences.ts';
import { Disclosure } from '../../parts/index.ts';
import licences from './licence-list.json';

/** Lines that were broken for a wide page run on here; short ones, such as who holds a right, stay lines. */
const flowing = (text: string): string => text.replaceAll(/^(.{50,}[^-\n])\n(?=\S)/gm, '$1 ');

/** Every piece of work with its terms; one text is open at a time. */
export default function LicenceList() {
  const [open, setOpen] = useState<string | null>(null);
  return (
    <>
      <p className="licences-what">{licenceWords.what}</p>
      <ul className="licences" aria-label={licenceWords.title}>
        {licences.map(({ name, version, licence, text }) => {
          const key = `${name} ${version}`;
          return (
            <li key={key}>
              <Disclosure
                label={
                  <>
                    <span>{name}</span>{' '}
                    <span className="quiet">{version ? `${version}, ${licence}` : licence}</span>
                  </>
                }
                open={open === key}
                onToggle={(opened) => setOpen(opened ? key : null)}
              >
                <p className="licence-text">{flowing(text)}</p>
              </Disclosure>
            </li>
          );
        })}
      </ul>
    </>
  );
}
