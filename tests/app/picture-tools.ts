import { mapPng } from '#renderer/drawing-export/map-png.ts';
import { scalePicture } from '#renderer/session/scale-picture.ts';

/** What the picture story calls inside the page. */
const pictureTools = { mapPng, scalePicture };
export type PictureTools = typeof pictureTools;

Object.assign(window, { pictureTools });
