import type { Measured } from '../../../shared/sheet/format.ts';
import { EntryField } from '../entry/entry-field.tsx';
import type { EntrySpot } from '../entry/spot.ts';
import { GaugeField, MaterialField } from './cell-name-field.tsx';

export interface MeasuredFieldsProps {
  cell: string;
  /** `measured`, or `outputs.NAME.measured`. */
  path: string;
  measured: Measured | undefined;
  /** The gauge planned for it. */
  gauge?: string | undefined;
  spot: (field: string) => EntrySpot;
}

/** What was read off the part. From then on everything below follows the part and not the plan. */
export const MeasuredFields = (props: MeasuredFieldsProps) => (
  <section>
    <h3 class="part-head">As measured</h3>
    <div class="fields">
      <EntryField
        label="Size as measured"
        spot={props.spot(`${props.path}.entry`)}
        value={props.measured?.entry}
        placeholder="once it is cut"
      />
      <GaugeField
        cell={props.cell}
        path={`${props.path}.gauge`}
        value={props.measured?.gauge ?? props.gauge}
      />
      <EntryField
        label="Part temperature"
        spot={{ ...props.spot(`${props.path}.at`), quantity: 'temperature' }}
        value={props.measured?.at}
        placeholder="as the room"
      />
      <MaterialField cell={props.cell} path={`${props.path}.material`} value={props.measured?.material} />
    </div>
  </section>
);
