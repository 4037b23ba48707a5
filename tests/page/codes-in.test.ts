import { afterEach, expect, test, vi } from 'vitest';

// A document without a root is none to what is read in after it.
afterEach(() => vi.unstubAllGlobals());

/** A browser's own reader of codes, which sees two, and then has trouble. */
test('the browser’s own reader is asked for QR codes where there is one; where it fails the library is', async () => {
  const asked: unknown[] = [];
  let fails = false;
  vi.stubGlobal(
    'BarcodeDetector',
    class {
      constructor(options: unknown) {
        asked.push(options);
      }
      static getSupportedFormats = async () => ['aztec', 'qr_code'];
      async detect(source: unknown) {
        if (fails) throw new DOMException('gone', 'InvalidStateError');
        asked.push(source);
        return [{ rawValue: 'one' }, { rawValue: 'two' }];
      }
    },
  );
  vi.stubGlobal('HTMLVideoElement', class {});
  const { codesInFilm } = await import('../../src/page/camera/codes-in.ts');
  const film = { width: 40, height: 30 } as unknown as HTMLVideoElement;
  expect(await codesInFilm(film)).toEqual(['one', 'two']);
  expect(asked).toEqual([{ formats: ['qr_code'] }, film]);
  fails = true;
  // The library draws the picture first.
  const drawn = vi.fn(() => ({ getContext: () => null }));
  vi.stubGlobal('document', { createElement: drawn });
  expect(await codesInFilm(film)).toEqual([]);
  expect(drawn).toHaveBeenCalledWith('canvas');
});
