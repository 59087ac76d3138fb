import { fieldProblem } from '#core/map/field-problem.ts';
import { fail, ok } from '#core/quantity/result.ts';
import { storeProblem } from '#db/store-problem.ts';
import type { WireReply } from '../contract/client.ts';
import { contract } from '../contract/contract.ts';

/** What printing needs of the window, the file dialog and the disk. */
export interface PrintMeans {
  printToPDF(options: {
    readonly pageSize: 'A4' | 'Letter';
    readonly printBackground: boolean;
    readonly preferCSSPageSize: boolean;
  }): Promise<Uint8Array>;
  /** The file to write to; null when the user thought better of it. */
  askWhere(fileName: string): Promise<string | null>;
  write(file: string, bytes: Uint8Array): Promise<void>;
}

const letters = { a4: 'A4', letter: 'Letter' } as const;

/** Answers `page.print`: the page as it stands, through its print sheet, into a PDF file the user names. */
export async function printPage(means: PrintMeans, rawInput: unknown): Promise<WireReply> {
  const input = contract['page.print'].input.safeParse(rawInput);
  if (!input.success) return fail(fieldProblem(input.error));
  const { fileName, paper } = input.data;
  const file = await means.askWhere(fileName);
  if (file === null) return ok({ saved: false });
  try {
    // The margins are the print sheet's own.
    const bytes = await means.printToPDF({
      pageSize: letters[paper],
      printBackground: true,
      preferCSSPageSize: false,
    });
    await means.write(file, bytes);
    return ok({ saved: true });
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    return fail(storeProblem(error) ?? { code: 'file-unreadable', file, detail });
  }
}
