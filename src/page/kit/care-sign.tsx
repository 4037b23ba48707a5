/** The general warning sign (ISO 7010 W001), by which a folded line shows that there is something to be careful of. */
export const CareSign = (props: { words: string }) => (
  <svg
    class="inline-block w-16px h-16px align-[-2px] text-doubt"
    viewBox="0 0 20 18"
    role="img"
    aria-label={props.words}
  >
    <path
      d="M10 1.5l8.8 15.2h-17.600z"
      fill="none"
      stroke="currentColor"
      stroke-width="1.8"
      stroke-linejoin="round"
    />
    <path d="M10 6.500v5M10 13.200v1.800" fill="none" stroke="currentColor" stroke-width="2" />
  </svg>
);
