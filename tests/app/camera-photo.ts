import type { Page } from '@playwright/test';

/** A photo as a camera held on its side gives it: lying, with the note that it must be turned a quarter clockwise. */
export async function cameraPhoto(page: Page, colour: string): Promise<Buffer> {
  const base64 = await page.evaluate(async (right) => {
    const canvas = document.createElement('canvas');
    canvas.width = 800;
    canvas.height = 400;
    const context = canvas.getContext('2d');
    if (!context) throw new Error('no canvas');
    context.fillStyle = right;
    context.fillRect(400, 0, 400, 400);
    context.fillStyle = 'rgb(220, 20, 20)';
    context.fillRect(0, 0, 400, 400);
    return canvas.toDataURL('image/jpeg', 0.9).split(',')[1] ?? '';
  }, colour);
  const jpeg = Buffer.from(base64, 'base64');
  // APP1 with one entry: tag 0x0112 (orientation), a SHORT of 6 (EXIF 2.32 section 4.6.5, from memory).
  const exif = Buffer.from(
    '457869660000' + '4d4d002a00000008' + '0001' + '0112' + '0003' + '00000001' + '00060000' + '00000000',
    'hex',
  );
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(exif.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, exif, jpeg.subarray(2)]);
}

/** Gives photos to the page by paste (at the document) or by drop (on an element), as the browser would. */
export async function givePhoto(
  page: Page,
  by: 'paste' | 'drop',
  selector: string,
  photo: Buffer,
  name: string,
): Promise<void> {
  await page.evaluate(
    ([way, at, base64, fileName]) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const carried = new DataTransfer();
      carried.items.add(new File([bytes], fileName, { type: 'image/jpeg' }));
      if (way === 'paste') {
        document.dispatchEvent(new ClipboardEvent('paste', { clipboardData: carried, bubbles: true }));
        return;
      }
      const target = document.querySelector(at);
      if (!target) throw new Error(at);
      target.dispatchEvent(
        new DragEvent('dragover', { dataTransfer: carried, bubbles: true, cancelable: true }),
      );
      target.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
    },
    [by, selector, photo.toString('base64'), name] as const,
  );
}
