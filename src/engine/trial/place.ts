/** One figure of the sheet: an output of a line. */
export interface FigurePlace {
  cell: string;
  output: string;
}

/** What of a line may move: its `entry`, its `tolerance`, or `inputs.NAME` of a library cell. */
export interface InputPlace {
  cell: string;
  field: string;
}
