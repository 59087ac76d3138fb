import { isOversized, oversized, readPictureHeader } from '#core/map/picture-header.ts';
import { fail, ok } from '#core/quantity/result.ts';
import { keepPicture, readPicture } from '#db/picture-store.ts';
import type { Handlers } from '../contract/handlers.ts';
import type { HostMeans } from './host-means.ts';
import { foundType, mostPictureBytes, pictureTypeOf } from './picture-type.ts';

/** The requests about the bytes of underlays and photos. */
export function pictureHandlers({ connection }: HostMeans): Pick<Handlers, 'picture.keep' | 'picture.read'> {
  return {
    'picture.keep': ({ base64 }) => {
      const bytes = Buffer.from(base64, 'base64');
      const mediaType = pictureTypeOf(bytes);
      if (!mediaType) {
        const found = foundType(bytes);
        return fail({ code: 'wrong-format', expected: 'image/jpeg, image/png, image/webp', found });
      }
      if (bytes.length > mostPictureBytes) {
        return fail({
          code: 'too-large',
          thing: mediaType,
          bytes: bytes.length,
          mostBytes: mostPictureBytes,
        });
      }
      const header = readPictureHeader(bytes);
      if (!header) return fail({ code: 'picture-unreadable', file: mediaType, mediaType: '' });
      if (isOversized(header)) return fail(oversized(mediaType, header));
      return ok({ sha256: keepPicture(connection, mediaType, bytes), mediaType });
    },
    'picture.read': ({ sha256 }) => {
      const kept = readPicture(connection, sha256);
      if (!kept.ok) return kept;
      const mediaType = pictureTypeOf(kept.value.bytes);
      if (!mediaType) return fail({ code: 'store-damaged', detail: 'a picture is of no known kind' });
      return ok({ mediaType, base64: kept.value.bytes.toString('base64') });
    },
  };
}
