/** How something went, read out when it comes. */
export const KeepSaid = ({ said }: { said: string }) => (
  <div role="alert">{said !== '' && <p className="notice">{said}</p>}</div>
);
