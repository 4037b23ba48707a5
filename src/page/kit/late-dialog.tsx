import type { Component } from 'solid-js';
import { Dialog } from './dialog.tsx';
import { late } from './late.tsx';

/** A dialog whose script is fetched when it is first opened; see {@link late}. */
export const lateDialog = <P extends { onClose: () => void }>(
  what: string,
  load: () => Promise<{ default: Component<P> }>,
) =>
  late(what, load, (said, props) => (
    <Dialog title={what} onClose={() => props.onClose()}>
      {said}
    </Dialog>
  ));
