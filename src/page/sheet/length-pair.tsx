import { useSheet } from '../state/context.ts';
import { switchLength } from '../state/switch-length.ts';

/** Which lengths the sheet is shown in, and whether the other system is shown beside it. */
export const LengthPair = () => {
  const context = useSheet();
  const { sheet } = context;
  const units = (length: 'in' | 'mm') => () => void switchLength(context, length);
  return (
    <fieldset class="pair flex [&>button+button]:lined-l-none">
      <legend class="unseen">Lengths in</legend>
      <button type="button" aria-pressed={sheet.state.units.length === 'in'} onClick={units('in')}>
        inch
      </button>
      <button type="button" aria-pressed={sheet.state.units.length === 'mm'} onClick={units('mm')}>
        mm
      </button>
      <button
        type="button"
        title="The other system small beside it"
        aria-pressed={sheet.state.units.both === true}
        onClick={() => sheet.document.setUnits({ both: sheet.state.units.both ? undefined : true })}
      >
        both
      </button>
    </fieldset>
  );
};
