import { encode } from 'uqr';

/** Modules of quiet round the code (ISO/IEC 18004: four). */
const QUIET = 4;

/** Path of the dark modules, one stroke a run of them in a row. */
const pathOf = (rows: readonly (readonly boolean[])[]): string =>
  rows
    .flatMap((row, y) => {
      const runs: string[] = [];
      for (let x = 0; x < row.length; x += 1) {
        if (!row[x]) continue;
        const from = x;
        while (row[x + 1]) x += 1;
        runs.push(`M${from} ${y}h${x + 1 - from}v1h-${x + 1 - from}z`);
      }
      return runs;
    })
    .join('');

/** A text as a QR code, black on white whatever paper the page is on: readers want it so. */
export default function QrCode(props: { text: string; name: string }) {
  const code = () => encode(props.text, { border: QUIET, boostEcc: true });
  return (
    <svg
      class="w-[min(100%,24rem)]"
      viewBox={`0 0 ${code().size} ${code().size}`}
      role="img"
      aria-label={props.name}
      shape-rendering="crispEdges"
    >
      <rect width={code().size} height={code().size} fill="#fff" />
      <path d={pathOf(code().data)} fill="#000" />
    </svg>
  );
}
