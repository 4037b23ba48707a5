import { createMemo, createUniqueId } from 'solid-js';
import type { MapFound, MapSide } from '../../engine/window/map.ts';
import './map.css';

const LEFT = 64;
const SIDE = 240;
const BOTTOM = 34;

/** Outlines of the cells of which `is` is true, row by row. */
const cellsPath = (map: MapFound, is: (cell: number) => boolean): string => {
  const step = SIDE / map.size;
  let path = '';
  for (let row = 0; row < map.size; row++)
    for (let i = 0; i < map.size; ) {
      if (!is(map.cells[row * map.size + i] as number)) {
        i++;
        continue;
      }
      const from = i;
      while (i < map.size && is(map.cells[row * map.size + i] as number)) i++;
      const y = SIDE - (row + 1) * step;
      path += `M${LEFT + from * step} ${y}h${(i - from) * step}v${step}h${(from - i) * step}z`;
    }
  return path;
};

/** Two inputs against each other: left white where every check holds, hatched where one does not; a diamond where both stand now. */
export const MapDrawing = (props: {
  map: MapFound;
  words: string;
  titles: readonly [across: string, up: string];
  text: (side: MapSide, si: number) => string;
}) => {
  const hatch = `hatch-${createUniqueId()}`;
  const out = createMemo(() => cellsPath(props.map, (cell) => cell >= 0));
  const inside = createMemo(() => cellsPath(props.map, (cell) => cell < 0));
  const at = (side: MapSide): number | undefined =>
    side.value === undefined ? undefined : (side.value - side.range.low) / (side.range.high - side.range.low);
  const now = () => {
    const [x, y] = [at(props.map.across), at(props.map.up)];
    const isOn = [x, y].every((one) => one !== undefined && one >= 0 && one <= 1);
    return isOn ? `M${LEFT + x! * SIDE} ${SIDE - y! * SIDE - 7}l6 7l-6 7l-6 -7z` : '';
  };
  const ends = (side: MapSide) => [props.text(side, side.range.low), props.text(side, side.range.high)];
  return (
    <svg
      class="input-map block w-full max-w-24rem h-auto"
      viewBox={`0 0 ${LEFT + SIDE + 8} ${SIDE + BOTTOM + 14}`}
      role="img"
      aria-label={props.words}
    >
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line class="hatch" x1="0" y1="0" x2="0" y2="6" />
        </pattern>
      </defs>
      <path d={out()} fill={`url(#${hatch})`} />
      <path class="inside" d={inside()} />
      <rect class="edge" x={LEFT} y="0" width={SIDE} height={SIDE} />
      <path class="now" d={now()} />
      <text x={LEFT} y={SIDE + 13}>
        {ends(props.map.across)[0]}
      </text>
      <text x={LEFT + SIDE} y={SIDE + 13} text-anchor="end">
        {ends(props.map.across)[1]}
      </text>
      <text x={LEFT + SIDE / 2} y={SIDE + 30} text-anchor="middle" class="side">
        {props.titles[0]}
      </text>
      <text x={LEFT - 3} y={SIDE} text-anchor="end">
        {ends(props.map.up)[0]}
      </text>
      <text x={LEFT - 3} y="10" text-anchor="end">
        {ends(props.map.up)[1]}
      </text>
      <text x="0" y="0" text-anchor="middle" class="side" transform={`translate(12 ${SIDE / 2}) rotate(-90)`}>
        {props.titles[1]}
      </text>
    </svg>
  );
};
