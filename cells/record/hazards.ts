/** Cautions that several kinds of cell share: on paper each is said once, with the numbers of all its lines. */

export const pressGuard =
  'A press stores enough to throw steel: guard or screen, eye protection, hands clear, nobody in line with the ram; never above the plate’s pressure, and by its maker’s instructions and local rules.';

export const pressStop =
  'Settle before the first stroke at what force or gauge you stop. Stop there, and wherever the force leaps, falls or bends away from its line: the part tilts, shaves or cracks.';

/** From memory: nearly all breaks of pressed-on hubs and wheels in bending begin under the edge of the fit. */
export const fitEdge =
  'A shaft bent as it turns cracks from fatigue under the edge of a press or shrink fit, at a fraction of its plain strength: relieve the hub or raise the seat where it is loaded so, and look there for cracks.';

export const solvents =
  'Solvents for degreasing burn and drive out the air: ventilate, no flame or spark, gloves, and let the part dry before it is bonded or heated.';

export const powerOff =
  'Lock the power off, and let what can fall, roll or spring come to rest, before a hand turns it.';

export const lifting =
  'Lift heavy parts with tackle rated for them, never stand under one, and block what it came off so that it cannot roll or drop.';

export const oldParts =
  'Old gaskets, packing, brake and clutch linings may hold asbestos, and old paint lead: do not scrape, blow or grind them dry; have them tested, and follow local rules.';

export const wheel =
  'A grinding wheel bursts above the speed marked on it: ring-test and guard it, eye protection, nobody in line with it; local rules come first.';

export const licensed =
  'Of lifting gear, pressure vessels, aircraft, fire pumps, and brakes and steering of road vehicles an authority licenses who may repair them, and how: ask first.';

export const cutting =
  'Chips are sharp and hot, and a tool that grabs throws the work: clamp it, eye protection, no gloves or loose sleeves near what turns, stop before measuring or clearing chips.';

export const milling =
  'A milling cutter grabs work and hand: clamp the work to the table, guard the cutter, feed against its teeth, and stop it before reaching in, brushing chips or measuring.';

export const reaming =
  'A reamer that grabs spins the work or breaks: clamp the work, feed steadily, never turn it backwards, and keep the hands off the teeth.';

export const broaching =
  'A broach shatters like glass: screen or guard, goggles, nobody in line with it; push square, stop when the force climbs, never strike it, and clear its chips with a brush after each pass.';

export const centres =
  'Work between centres flies when a centre burns or slackens: centre holes clean and oiled, tailstock locked, driving dog guarded.';

export const honing =
  'A hone that leaves the bore while it turns flies apart: stop it inside, and keep its mist off hot parts.';

export const pressureTest =
  'Test for pressure with liquid, air bled off, behind a screen: a part filled with air bursts like a shell. A fire pump out of service leaves the mill unguarded: tell whoever answers for it, and set a watch.';
