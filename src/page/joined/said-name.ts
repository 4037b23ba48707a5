import { revealed } from '../../../shared/sheet/characters.ts';
import { say } from '../kit/words.ts';

/** A name from the wire, of a device or a sheet: what cannot be seen of it is written out, so that it turns no neighbour. */
export const saidName = (name: string): string => say(revealed(name));
