import { createSignal } from 'solid-js';

/** Whoever shows whether a sheet is shared looks again. */
const [sharing, noteSharing] = createSignal(0);

export { sharing };
export const sharingChanged = (): void => void noteSharing((n) => n + 1);
