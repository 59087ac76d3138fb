import { expect, test } from 'vitest';
import { type PrintMeans, printPage } from '#electron/desktop/print-page.ts';

function stage(changes: Partial<PrintMeans> = {}) {
  const asked: unknown[] = [];
  const written: { file: string; bytes: Uint8Array }[] = [];
  const means: PrintMeans = {
    printToPDF: async (options) => {
      asked.push(options);
      return Uint8Array.of(37, 80, 68, 70);
    },
    askWhere: async (fileName) => `folder/${fileName}`,
    write: async (file, bytes) => void written.push({ file, bytes }),
    ...changes,
  };
  return { means, asked, written };
}

test('the page is printed on the paper asked for and written where the user said', async () => {
  const { means, asked, written } = stage();
  expect(await printPage(means, { fileName: 'report.pdf', paper: 'letter' })).toEqual({
    ok: true,
    value: { saved: true },
  });
  expect(asked).toMatchObject([{ pageSize: 'Letter' }]);
  expect(written).toEqual([{ file: 'folder/report.pdf', bytes: Uint8Array.of(37, 80, 68, 70) }]);
});

test('nothing is printed when the user thinks better of it', async () => {
  const { means, asked, written } = stage({ askWhere: async () => null });
  expect(await printPage(means, { fileName: 'report.pdf', paper: 'a4' })).toEqual({
    ok: true,
    value: { saved: false },
  });
  expect([asked, written]).toEqual([[], []]);
});

test('a full disk is told as one, and input beyond the contract is refused', async () => {
  const full = Object.assign(new Error('no space'), { code: 'ENOSPC' });
  const { means } = stage({ write: () => Promise.reject(full) });
  expect(await printPage(means, { fileName: 'report.pdf', paper: 'a4' })).toEqual({
    ok: false,
    problem: { code: 'store-full' },
  });
  expect(await printPage(stage().means, { fileName: '', paper: 'a0' })).toMatchObject({
    problem: { code: 'bad-field' },
  });
});
