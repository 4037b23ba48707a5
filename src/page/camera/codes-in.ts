/** The part of the browser's own reader that is used here; not every browser has one, and none over plain HTTP. */
interface Detector {
  detect(source: ImageBitmapSource): Promise<ReadonlyArray<{ rawValue: string }>>;
}

interface DetectorClass {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<string[]>;
}

let own: Promise<Detector | undefined> | undefined;

const ownDetector = (): Promise<Detector | undefined> => {
  own ??= (async () => {
    const { BarcodeDetector } = globalThis as { BarcodeDetector?: DetectorClass };
    if (!BarcodeDetector) return undefined;
    const formats = await BarcodeDetector.getSupportedFormats();
    return formats.includes('qr_code') ? new BarcodeDetector({ formats: ['qr_code'] }) : undefined;
  })().catch(() => undefined);
  return own;
};

interface Size {
  width: number;
  height: number;
}

/** As many codes as a sheet has at most. */
const MOST = 16;

type Source = ImageBitmap | HTMLVideoElement;

/** By the browser's own reader; undefined where there is none, or it fails at it. */
const byOwn = async (source: Source): Promise<string[] | undefined> => {
  const detector = await ownDetector();
  return detector
    ?.detect(source)
    .then((codes) => codes.map(({ rawValue }) => rawValue))
    .catch(() => undefined);
};

const sizeOf = (source: Source): Size =>
  source instanceof HTMLVideoElement
    ? { width: source.videoWidth, height: source.videoHeight }
    : { width: source.width, height: source.height };

/** Reads by the library, which finds one code at a time: what was read is covered, and the rest looked at again. */
const byLibrary = async (source: Source, longest: number): Promise<string[]> => {
  const { default: jsQR } = await import('jsqr');
  const { width, height } = sizeOf(source);
  // Squares of less than about four pixels are read better enlarged.
  const scale = Math.min(2, longest / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const drawing = canvas.getContext('2d', { willReadFrequently: true });
  if (!drawing) return [];
  drawing.drawImage(source, 0, 0, canvas.width, canvas.height);
  const found: string[] = [];
  while (found.length < MOST) {
    const { data } = drawing.getImageData(0, 0, canvas.width, canvas.height);
    const code = jsQR(data, canvas.width, canvas.height);
    if (!code) break;
    if (code.data !== '') found.push(code.data);
    const { topLeftCorner, topRightCorner, bottomRightCorner, bottomLeftCorner } = code.location;
    drawing.fillStyle = '#fff';
    drawing.beginPath();
    for (const { x, y } of [topLeftCorner, topRightCorner, bottomRightCorner, bottomLeftCorner])
      drawing.lineTo(x, y);
    drawing.fill();
  }
  return found;
};

/** Longest side a picture of a film is read at, pixels: enough for a code that fills half of it, in a tenth of a second. */
const FILM = 800;
/** A photo is read small first, which is quick and forgives blur, then bigger. */
const PHOTO = [1000, 2000, 3000];

/** The texts of the QR codes (ISO/IEC 18004) that a camera sees now. */
export const codesInFilm = async (film: HTMLVideoElement): Promise<string[]> => {
  return (await byOwn(film)) ?? byLibrary(film, FILM);
};

/** The texts of the QR codes in a photo. @throws where it is no picture */
export const codesInPhoto = async (photo: Blob): Promise<string[]> => {
  const picture = await createImageBitmap(photo);
  try {
    const found = new Set(await byOwn(picture));
    if (found.size > 0) return [...found];
    for (const longest of PHOTO) {
      for (const text of await byLibrary(picture, longest)) found.add(text);
      if (2 * Math.max(picture.width, picture.height) <= longest) break;
    }
    return [...found];
  } finally {
    picture.close();
  }
};
