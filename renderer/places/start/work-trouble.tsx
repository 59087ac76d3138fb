import { troubleDetails } from '../../language/copy-details.ts';
import { CopyDetails } from '../../parts/copy-details.tsx';
import { Notice } from '../../parts/index.ts';

/** Work on the data file that was not done, in words, with what to do about it. */
export function WorkTrouble({ title, code }: { readonly title: string; readonly code: string }) {
  return (
    <Notice
      tone="failed"
      title={title}
      actions={<CopyDetails details={troubleDetails(code, new Date().toISOString())} />}
    />
  );
}
