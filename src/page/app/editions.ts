import { createSignal } from 'solid-js';

/** `waiting`: a newer edition is here and waits to be taken. `elsewhere`: another tab has taken it. */
type Edition = 'present' | 'waiting' | 'elsewhere';

const [edition, setEdition] = createSignal<Edition>('present');

export { edition };

/** How often the server is asked for a newer edition while the page is in use, milliseconds. */
const HOUR = 3_600_000;

let registration: ServiceWorkerRegistration | undefined;
let taking = false;

/** Takes the newer edition: this page loads again with it. */
export const takeEdition = (): void => {
  taking = true;
  registration?.waiting?.postMessage('take');
};

/** Keeps the page for use without a server, and tells of a newer edition. Where the browser will not, nothing changes. */
export const keepForOffline = async (): Promise<void> => {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  let hadOne = serviceWorker.controller !== null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (taking) location.reload();
    else if (hadOne) setEdition('elsewhere');
    hadOne = true;
  });
  registration = await serviceWorker.register('./service-worker.js').catch(() => undefined);
  if (!registration) return;
  const found = registration;
  const look = () => {
    if (found.waiting && serviceWorker.controller) setEdition('waiting');
  };
  look();
  found.addEventListener('updatefound', () => {
    found.installing?.addEventListener('statechange', look);
  });
  let asked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.hidden || Date.now() - asked < HOUR) return;
    asked = Date.now();
    // Without a server there is nothing to hear.
    void found.update().catch(() => undefined);
  });
};
