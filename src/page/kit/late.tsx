import { type Component, createResource, type JSX, onCleanup, onMount, Show } from 'solid-js';

/** Says that a part of the page is not there, and how to get it. */
const MissingPart = (props: { what: string; onAgain: () => void }) => {
  // With the line back there is no need to be asked.
  const again = () => props.onAgain();
  onMount(() => addEventListener('online', again));
  onCleanup(() => removeEventListener('online', again));
  return (
    <div class="trouble" role="alert">
      <p>
        {props.what} could not be fetched. What is entered is kept. Where a new edition of the page has come
        meanwhile, only loading the page again brings it.
      </p>
      <div class="buttons">
        <button type="button" onClick={again}>
          Try again
        </button>
        <button type="button" onClick={() => location.reload()}>
          Load the page again
        </button>
      </div>
    </div>
  );
};

/**
 * A part of the page whose script is fetched when it is first shown. One that does not come says so, in `frame`, and can
 * be asked for again.
 * @param what it is, as the beginning of a sentence
 */
export const late = <P extends object>(
  what: string,
  load: () => Promise<{ default: Component<P> }>,
  frame: (said: JSX.Element, props: P) => JSX.Element = (said) => said,
): Component<P> & { preload: () => Promise<unknown> } => {
  let there: Component<P> | undefined;
  let asked: Promise<Component<P>> | undefined;
  const fetchPart = (): Promise<Component<P>> => {
    asked ??= load().then(
      (module) => {
        there = module.default;
        return there;
      },
      (error: unknown) => {
        asked = undefined;
        throw error;
      },
    );
    return asked;
  };
  const Part = (props: P) => {
    if (there) return there(props);
    const [part, { refetch }] = createResource(() =>
      fetchPart().then(
        (found) => ({ found }),
        () => ({ found: undefined }),
      ),
    );
    return (
      <Show when={part()} keyed>
        {({ found }) =>
          found ? found(props) : frame(<MissingPart what={what} onAgain={() => void refetch()} />, props)
        }
      </Show>
    );
  };
  return Object.assign(Part, { preload: fetchPart });
};
