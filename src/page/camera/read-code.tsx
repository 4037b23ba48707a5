import { createSignal, onCleanup, Show } from 'solid-js';

export interface ReadCodeProps {
  /** What is seen, each text once until another comes; a camera stays on until this says that it was enough. */
  onText: (text: string) => void;
}

/** Milliseconds between looks at the film. */
const EVERY = 150;

const REFUSED: { [name: string]: string } = {
  NotAllowedError: 'The browser was not allowed to use the camera: allow it in the settings of this page.',
  NotFoundError: 'There is no camera.',
  NotReadableError: 'Another program uses the camera.',
};

/**
 * Reads QR codes: by the camera, live, where the browser gives it to the page (https, or this machine itself); by a photo
 * everywhere.
 */
export default function ReadCode(props: ReadCodeProps) {
  const [told, setTold] = createSignal('');
  const [film, setFilm] = createSignal<MediaStream>();
  const hasCamera = navigator.mediaDevices?.getUserMedia !== undefined;
  let photo!: HTMLInputElement;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last: string | undefined;

  const stop = () => {
    clearTimeout(timer);
    for (const track of film()?.getTracks() ?? []) track.stop();
    setFilm(undefined);
  };
  onCleanup(stop);

  const see = (texts: readonly string[]) => {
    for (const text of texts) if (text !== last || texts.length > 1) props.onText(text);
    last = texts.at(-1) ?? last;
  };
  const watch = (video: HTMLVideoElement) => {
    const look = async () => {
      if (!film()) return;
      const { codesInFilm } = await import('./codes-in.ts');
      if (video.readyState >= HTMLMediaElement.HAVE_CURRENT_DATA && video.videoWidth > 0)
        see(await codesInFilm(video));
      if (film()) timer = setTimeout(() => void look().catch(failed), EVERY);
    };
    void look().catch(failed);
  };
  const failed = (error: unknown) => {
    stop();
    const name = error instanceof Error ? error.name : '';
    setTold(REFUSED[name] ?? `The camera gives nothing: ${error instanceof Error ? error.message : error}`);
  };
  const start = async () => {
    setTold('');
    last = undefined;
    // The camera at the back of a phone.
    const video = { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } };
    setFilm(await navigator.mediaDevices.getUserMedia({ video }));
  };
  const readPhotos = async (files: readonly File[]) => {
    setTold('Reading the photo …');
    const { codesInPhoto } = await import('./codes-in.ts');
    const texts: string[] = [];
    let unread = 0;
    for (const file of files) {
      const found = await codesInPhoto(file).catch(() => undefined);
      if (found === undefined) unread += 1;
      else texts.push(...found);
    }
    setTold(
      unread > 0
        ? 'That is no picture that this browser reads.'
        : texts.length > 0
          ? ''
          : 'No code was found. Come nearer, so that it fills half of the picture, and hold still.',
    );
    for (const text of texts) props.onText(text);
  };
  return (
    <section class="read-code stacked gap-2 justify-items-start" aria-label="Read a code">
      <div class="buttons">
        <Show when={hasCamera}>
          <button type="button" onClick={() => (film() ? stop() : void start().catch(failed))}>
            {film() ? 'Camera off' : 'Read codes with the camera'}
          </button>
        </Show>
        <button type="button" onClick={() => photo.click()}>
          Photograph a code
        </button>
        <input
          ref={photo}
          type="file"
          class="unseen"
          tabindex={-1}
          aria-label="Photo of a code"
          accept="image/*"
          capture="environment"
          onClick={(event) => {
            event.currentTarget.value = '';
          }}
          onChange={(event) => {
            const files = [...(event.currentTarget.files ?? [])];
            if (files.length > 0)
              void readPhotos(files).catch((error: unknown) => setTold(`It was not read: ${String(error)}`));
          }}
        />
      </div>
      <Show when={film()}>
        {(stream) => (
          <video
            class="w-[min(100%,24rem)] lined"
            aria-label="What the camera sees"
            muted
            playsinline
            ref={(video) => {
              video.srcObject = stream();
              void video.play().catch(failed);
              watch(video);
            }}
          />
        )}
      </Show>
      <p role="status" class="empty:hidden">
        {told()}
      </p>
    </section>
  );
}
