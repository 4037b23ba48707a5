import { createSignal, onCleanup } from 'solid-js';

/** Rows drawn at first, and added each time their end comes into view. */
const STEP = 60;

/** A long list that is drawn as far as somebody scrolls. */
export const createGrowing = <T>(all: () => readonly T[]) => {
  const [count, setCount] = createSignal(STEP);
  const grow = () => setCount((n) => n + STEP);
  const observer = new IntersectionObserver(
    (entries) => {
      if (entries.some((entry) => entry.isIntersecting)) grow();
    },
    { rootMargin: '1200px' },
  );
  onCleanup(() => observer.disconnect());
  return {
    shown: () => all().slice(0, count()),
    more: () => all().length > count(),
    grow,
    reset: () => setCount(STEP),
    /** To be given the element that stands behind the last row. */
    watch: (element: Element) => {
      observer.disconnect();
      observer.observe(element);
    },
  };
};
