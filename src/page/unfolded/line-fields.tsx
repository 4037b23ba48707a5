import { For, Show } from 'solid-js';
import { quantityKinds } from '../../../shared/quantities/quantities.ts';
import type { Role } from '../../../shared/sheet/format.ts';
import { ROLE_MEANING, ROLE_WORDS } from '../../../shared/sheet/role-words.ts';
import { EntryField } from '../entry/entry-field.tsx';
import type { EntrySpot } from '../entry/spot.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import { Part } from '../kit/part.tsx';
import { SelectField } from '../kit/select-field.tsx';
import { TextField } from '../kit/text-field.tsx';
import { useSheet } from '../state/context.ts';
import type { Sheet } from '../state/sheet.ts';
import { GaugeField, MaterialField } from './cell-name-field.tsx';
import { IssueField } from './issue-field.tsx';
import { LimitFields } from './limit-fields.tsx';
import { MeasuredFields } from './measured-fields.tsx';
import { UnitField } from './unit-field.tsx';
import { WayField } from './way-field.tsx';

const ROLES = Object.entries(ROLE_MEANING) as Array<[Role, string]>;

const spotIn =
  (sheet: Sheet, cell: string) =>
  (field: string, kind: 'entry' | 'tolerance' = 'entry'): EntrySpot => ({
    cell,
    field,
    kind,
    quantity: sheet.shape(cell, 'value')?.quantity ?? sheet.line(cell)?.record.quantity,
  });

/** What a plain line says of itself. What only some roles need is shown only there. */
export const LineFields = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const record = () => sheet.line(props.cell)!.record;
  const set = (path: string, value: unknown) => sheet.document.setField(props.cell, path, value);
  const spot = spotIn(sheet, props.cell);
  const measured = () => record().role === 'measured';
  return (
    <div class="grid gap-2">
      <Part title="The line">
        <div class="fields">
          <TextField
            label="Label"
            value={record().label}
            aside={{ sheet: sheet.document.id, cell: props.cell, field: 'label' }}
            onCommit={(text) => set('label', text)?.message}
          />
          <TextField
            label="Name in formulas"
            draft={`${location.hash} ${props.cell} name`}
            value={record().name}
            aside={{ sheet: sheet.document.id, cell: props.cell, field: 'name' }}
            onCommit={(text) => sheet.document.renameCell(props.cell, text)?.message}
          />
          <SelectField
            label="How the value comes about"
            value={record().role}
            options={ROLES.map(([value]) => ({ value, label: ROLE_WORDS[value] }))}
            onCommit={(value) => set('role', value)}
          />
          <SelectField
            label="Kind of quantity"
            value={record().quantity ?? ''}
            options={[
              { value: '', label: 'from the entry' },
              ...quantityKinds.map((kind) => ({ value: kind.name, label: kind.label })),
            ]}
            onCommit={(value) => set('quantity', value || undefined)}
          />
          <Show when={!measured()}>
            <SelectField
              label="What it follows by"
              value={record().basis ?? ''}
              options={[
                { value: '', label: 'as it is typed' },
                { value: 'geometry', label: 'geometry alone' },
                { value: 'equipment', label: 'measuring equipment' },
              ]}
              onCommit={(value) => set('basis', value || undefined)}
            />
          </Show>
          <UnitField cell={props.cell} output="value" path="display" />
          <WayField cell={props.cell} record={record()} />
          <Show when={record().role === 'chosen' || record().role === 'given'}>
            <EntryField
              label={record().role === 'chosen' ? 'Tolerance when cut' : 'Tolerance'}
              spot={spot('tolerance', 'tolerance')}
              value={record().tolerance}
              placeholder={usesComma() ? '+0,0005 -0 · ±0,001 · H7' : '+.0005 -0 · ±.001 · H7'}
            />
          </Show>
          <Show when={measured()}>
            <GaugeField cell={props.cell} path="gauge" value={record().gauge} />
            <EntryField
              label="Part temperature"
              spot={{ ...spot('at'), quantity: 'temperature' }}
              value={record().at}
              placeholder="as the room"
            />
            <MaterialField cell={props.cell} path="material" value={record().material} />
          </Show>
        </div>
        <p class="caption">
          <For each={ROLES.filter(([role]) => role === record().role)}>{([, meaning]) => meaning}</For>
        </p>
      </Part>
    </div>
  );
};

/** What a plain line is held to, what it came out at, and what was sent to the machine. */
export const LineLimits = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const record = () => sheet.line(props.cell)!.record;
  const spot = spotIn(sheet, props.cell);
  const cut = () => record().role === 'chosen' || record().role === 'worked';
  return (
    <div class="grid gap-2">
      <Show when={cut()}>
        <MeasuredFields
          cell={props.cell}
          path="measured"
          measured={record().measured}
          gauge={record().gauge}
          spot={spot}
        />
      </Show>
      <LimitFields
        cell={props.cell}
        path="limits"
        limits={record().limits}
        spot={spot}
        locked={record().locked === true}
      />
      <Show when={cut()}>
        <IssueField cell={props.cell} spot={spot('issued')} />
      </Show>
    </div>
  );
};
