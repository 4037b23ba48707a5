/** A code that was read joins a server at another address, where this browser keeps other sheets. */
export const LeadsElsewhere = (props: { address: string }) => (
  <p role="status">
    The code joins a shop’s server at another address, for which this browser keeps sheets of their own:{' '}
    <a href={props.address}>{new URL(props.address).host}</a>
  </p>
);
