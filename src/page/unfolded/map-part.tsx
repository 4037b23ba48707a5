import { createMemo, createSignal, For, Match, Show, Switch } from 'solid-js';
import type { InputPlace } from '../../engine/trial/place.ts';
import type { MapFound, MapSide } from '../../engine/window/map.ts';
import { mapValue } from '../../engine/window/map-value.ts';
import { valueText } from '../../engine/window/words.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import { SelectField } from '../kit/select-field.tsx';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { CheckList } from './check-list.tsx';
import { MapDrawing } from './map-drawing.tsx';
import { createTried } from './tried.ts';
import { allPlaces, type Place } from './window-places.ts';

const keyOf = ({ cell, field }: Place): string => `${cell} ${field}`;

/** The map of an input and another one, while it is asked for. */
const createMap = (of: () => Place | undefined) => {
  const { sheet } = useSheet();
  const library = useLibrary();
  const others = createMemo(() => {
    const own = of();
    return allPlaces(sheet, library()).filter((one) => own && keyOf(one) !== keyOf(own));
  });
  const [chosen, setChosen] = createSignal('');
  const other = () => others().find((one) => keyOf(one) === chosen());
  const tried = createTried<'map'>(sheet, () => {
    const [across, up] = [of(), other()];
    return across && up && { ask: 'map', across: inputOf(across), up: inputOf(up) };
  });
  return { others, chosen, setChosen, other, ...tried };
};

const inputOf = ({ cell, field }: Place): InputPlace => ({ cell, field });

/** Where two inputs may stand together, on request. */
export default function MapPart(props: { of: Place | undefined }) {
  const map = createMap(() => props.of);
  const running = () => {
    const now = map.state();
    return now.is === 'running' ? now : undefined;
  };
  const answer = () => {
    const now = map.state();
    return now.is === 'there' ? now.answer : undefined;
  };
  return (
    <div class="map-part grid gap-2">
      <div class="flex flex-wrap items-end gap-2">
        <SelectField
          label="Together with"
          value={map.chosen()}
          options={[
            { value: '', label: 'another input …' },
            ...map.others().map((one) => ({ value: keyOf(one), label: one.title })),
          ]}
          onCommit={map.setChosen}
        />
        <Switch>
          <Match when={running()}>
            {(now) => (
              <>
                <progress
                  class="flex-[1_1_8rem] accent-pencil"
                  max={now().of}
                  value={now().done}
                  aria-label="Rows of the map worked out"
                />
                <button type="button" onClick={() => now().cancel()}>
                  Cancel
                </button>
              </>
            )}
          </Match>
          <Match when={true}>
            <button type="button" disabled={!map.other()} onClick={() => void map.run()}>
              Draw the map of both
            </button>
          </Match>
        </Switch>
      </div>
      <Show when={(map.state() as { message?: string }).message}>
        {(message) => <p role="alert">The map could not be worked out: {message()}</p>}
      </Show>
      <Show when={answer()?.is === 'none' && (answer() as { why: string }).why}>
        {(why) => <p>{why()}</p>}
      </Show>
      <Show when={answer()?.is === 'found' && (answer() as MapFound)}>
        {(found) => <MapSaid map={found()} />}
      </Show>
    </div>
  );
}

/** Rows of the table beside the map. */
const ROWS = 8;

/** Runs of cells of one row in which all holds. */
const runsOf = (map: MapFound, row: number): [number, number][] => {
  const runs: [number, number][] = [];
  for (let i = 0; i < map.size; i++) {
    if (map.cells[row * map.size + i] !== -1) continue;
    const last = runs.at(-1);
    if (last && last[1] === i - 1) last[1] = i;
    else runs.push([i, i]);
  }
  return runs;
};

const MapSaid = (props: { map: MapFound }) => {
  const { sheet } = useSheet();
  const library = useLibrary();
  const text = (side: MapSide, si: number) => valueText({ ...side }, si, usesComma());
  const titles = createMemo(() => new Map(allPlaces(sheet, library()).map((one) => [keyOf(one), one.title])));
  const title = ({ place, name }: MapSide) => titles().get(`${place.cell} ${place.field}`) ?? name;
  const held = () => props.map.cells.reduce((sum, cell) => sum + (cell === -1 ? 1 : 0), 0);
  const rows = () => {
    const { size } = props.map;
    const found = new Set(Array.from({ length: ROWS }, (_, i) => Math.round((i * (size - 1)) / (ROWS - 1))));
    return [...found].sort((a, b) => b - a);
  };
  const inWords = (row: number) => {
    const { map } = props;
    const at = (i: number) => text(map.across, mapValue(map.across, i, map.size));
    return (
      runsOf(map, row)
        .map(([from, to]) => (from === to ? at(from) : `${at(from)} to ${at(to)}`))
        .join('; ') || 'nowhere'
    );
  };
  const words = () =>
    `${title(props.map.across)} across, ${title(props.map.up)} upward: every check holds in ${held()} of ${props.map.cells.length} cells.`;
  /** The checks that are the first to fail somewhere. */
  const failing = () => [...new Set(props.map.cells)].filter((cell) => cell >= 0).sort((a, b) => a - b);
  return (
    <>
      <MapDrawing
        map={props.map}
        words={words()}
        text={text}
        titles={[title(props.map.across), title(props.map.up)]}
      />
      <p>{words()}</p>
      <table class="budget">
        <thead>
          <tr>
            <th scope="col">{title(props.map.up)}</th>
            <th scope="col">{title(props.map.across)} may be</th>
          </tr>
        </thead>
        <tbody>
          <For each={rows()}>
            {(row) => (
              <tr>
                <th scope="row" class="figure">
                  {text(props.map.up, mapValue(props.map.up, row, props.map.size))}
                </th>
                <td>{inWords(row)}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <div class="caption">
        Where it is hatched one of these does not hold:
        <CheckList checks={failing().map((cell) => props.map.checks[cell]!)} />
      </div>
      <Show when={props.map.leftOut.length > 0}>
        <div class="caption">
          Left out, for they hold nowhere on the map:
          <CheckList checks={props.map.leftOut} />
        </div>
      </Show>
      <p class="caption">
        By corners: each cell at its middle, with the sources of spread where they are worst as the sheet
        stands. Before you cut, go by the sheet itself or by the window of either.
      </p>
    </>
  );
};
