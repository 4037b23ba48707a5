/**
 * A second method for the bearing charts: the Reynolds equation of a full journal bearing with Reynolds' boundary (pressure
 * never below zero), by finite differences and successive over-relaxation.
 */
export interface Solved {
  S: number;
  attitude: number;
  /** P / pmax */
  pressure: number;
}

export const solveFilm = (
  eccentricity: number,
  lengthOverDiameter: number,
  around: number,
  along: number,
): Solved => {
  const dt = (2 * Math.PI) / around;
  const dz = 1 / along;
  const film = Array.from({ length: around + 1 }, (_, i) => 1 + eccentricity * Math.cos(i * dt));
  const p = Array.from({ length: around + 1 }, () => new Float64Array(along + 1));
  const axial = 1 / (lengthOverDiameter ** 2 * dz * dz);
  for (let pass = 0; pass < 6000; pass++) {
    let change = 0;
    let top = 0;
    for (let i = 1; i < around; i++) {
      const east = ((film[i]! + film[i + 1]!) / 2) ** 3 / (dt * dt);
      const west = ((film[i]! + film[i - 1]!) / 2) ** 3 / (dt * dt);
      const side = film[i]! ** 3 * axial;
      const wedge = (film[i + 1]! - film[i - 1]!) / (2 * dt);
      const here = p[i]!;
      for (let j = 0; j < along; j++) {
        // j = 0 is the middle of the bearing, a plane of symmetry; j = along is its open end.
        const inner = j === 0 ? here[1]! : here[j - 1]!;
        const balance = east * p[i + 1]![j]! + west * p[i - 1]![j]! + side * (here[j + 1]! + inner) - wedge;
        const next = Math.max(0, here[j]! + 1.85 * (balance / (east + west + 2 * side) - here[j]!));
        change = Math.max(change, Math.abs(next - here[j]!));
        here[j] = next;
        top = Math.max(top, next);
      }
    }
    if (change < 1e-7 * top) break;
  }
  let radial = 0;
  let tangential = 0;
  let top = 0;
  for (let i = 0; i < around; i++)
    for (let j = 0; j <= along; j++) {
      const share = (j === 0 || j === along ? 0.5 : 1) * p[i]![j]! * dt * dz;
      radial += share * Math.cos(i * dt);
      tangential += share * Math.sin(i * dt);
      top = Math.max(top, p[i]![j]!);
    }
  const load = Math.hypot(radial, tangential);
  return {
    S: 1 / (6 * Math.PI * load),
    attitude: (Math.atan2(tangential, -radial) * 180) / Math.PI,
    pressure: load / 2 / top,
  };
};

/** The infinitely long bearing in one sweep, where the film ends at `end` with no slope of pressure. */
export const solveLongFilm = (eccentricity: number): Solved & { friction: number; flow: number } => {
  const steps = 40000;
  const film = (t: number): number => 1 + eccentricity * Math.cos(t);
  const climb = (end: number): number => {
    const dt = end / steps;
    let sum = 0;
    for (let i = 0; i < steps; i++)
      sum += ((film((i + 0.5) * dt) - film(end)) / film((i + 0.5) * dt) ** 3) * dt;
    return sum;
  };
  let [low, high] = [Math.PI + 1e-6, 2 * Math.PI - 1e-6];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (climb(middle) > 0) low = middle;
    else high = middle;
  }
  const end = (low + high) / 2;
  const dt = end / steps;
  let [p, radial, tangential, top, drag] = [0, 0, 0, 0, 0];
  for (let i = 0; i < steps; i++) {
    const t = (i + 0.5) * dt;
    const slope = (film(t) - film(end)) / film(t) ** 3;
    p += slope * dt;
    radial += p * Math.cos(t) * dt;
    tangential += p * Math.sin(t) * dt;
    top = Math.max(top, p);
    drag += (1 / film(t) + 3 * film(t) * slope) * dt;
  }
  const rest = (2 * Math.PI - end) / steps;
  for (let i = 0; i < steps; i++) drag += rest / film(end + (i + 0.5) * rest);
  const load = Math.hypot(radial, tangential);
  return {
    S: 1 / (6 * Math.PI * load),
    attitude: (Math.atan2(tangential, -radial) * 180) / Math.PI,
    pressure: load / 2 / top,
    friction: drag / (6 * load),
    flow: Math.PI * film(end),
  };
};
