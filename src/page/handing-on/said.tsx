import { revealed } from '../../../shared/sheet/characters.ts';

/** A text from a stranger: shown as text, with what cannot be seen written out, and kept from turning its neighbours. */
export const Said = (props: { text: string | undefined }) => <bdi>{revealed(props.text ?? '')}</bdi>;
