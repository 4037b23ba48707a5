import { overfull } from '../../document/room.ts';
import { useSheet } from '../state/context.ts';

/** That the sheet has more lines than a file of it may have, as long as it has. */
export default function OverfullLine() {
  const { sheet } = useSheet();
  return (
    <div class="trouble" role="alert">
      <p>{overfull(sheet.state.order.length)}</p>
    </div>
  );
}
