/**
 * For an edit that ends by a key: gives the focus back to the cell it was typed in, unless it is elsewhere by then. To be
 * called while the editor has the focus; what it gives, before the editor goes: to move the focus once the editor has
 * gone would lay the page out for that alone.
 */
export const backToCell = (): (() => void) => {
  const { activeElement } = document;
  return () => {
    if (document.activeElement === activeElement)
      activeElement?.closest<HTMLElement>('[data-column]')?.focus({ preventScroll: true });
  };
};
