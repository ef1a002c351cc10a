// A photograph made small before it is kept: it must be sent over a thin line, and the place where
// it was taken, which phones write into it, goes no further than the phone's own camera.

import { limits } from '../../limits.ts';

export type Size = { readonly width: number; readonly height: number };

/** Never larger than it was; never less than one pixel. */
export function fitted({ width, height }: Size, longest: number = limits.app.photoPx): Size {
  const share = Math.min(1, longest / Math.max(width, height));
  const side = (px: number) => Math.max(1, Math.round(px * share));
  return { width: side(width), height: side(height) };
}

/** What cannot be drawn is no picture: it is refused like any other bytes, and never kept whole. */
const NO_PICTURE = new Blob([]);

/** Drawn anew, upright: of the file that the camera wrote nothing but its pixels is left. */
export async function drawnAnew(file: Blob): Promise<Blob> {
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(
    () => null,
  );
  if (bitmap === null) return NO_PICTURE;
  const canvas = document.createElement('canvas');
  const { width, height } = fitted(bitmap);
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (pen === null) return NO_PICTURE;
  // JPEG knows no transparency: what a picture leaves out is paper, not black.
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, width, height);
  pen.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  const drawn = await new Promise<Blob | null>((done) => {
    canvas.toBlob(done, 'image/jpeg', limits.app.photoQuality);
  });
  return drawn ?? NO_PICTURE;
}
