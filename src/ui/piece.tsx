import { type ComponentType, type ReactNode, useEffect, useState } from 'react';

interface State<P> {
  readonly Part?: ComponentType<P>;
  readonly failure?: { readonly error: unknown };
}

/**
 * A part of the screen that is in a script of its own. Drawn at once when the script is there; if
 * it does not come, the error is thrown into the tree, and the next try asks again.
 *
 * Not React's `lazy`: what a fallback stood for is held back for 300 ms, so that fallbacks do not
 * flicker, also when the script came within a few.
 *
 * @param meanwhile stands there until the part comes
 */
export function piece<P extends object>(
  load: () => Promise<ComponentType<P>>,
  meanwhile: ReactNode = null,
): ComponentType<P> {
  let loaded: State<P> = {};
  // biome-ignore lint/correctness/noComponentHookFactories: called once for each part, at the top of a file
  return function Piece(props: P) {
    const [{ Part, failure }, become] = useState(loaded);
    useEffect(() => {
      if (loaded.Part !== undefined) return;
      load().then(
        (part) => {
          loaded = { Part: part };
          become(loaded);
        },
        (error: unknown) => become({ failure: { error } }),
      );
    }, []);
    if (failure !== undefined) throw failure.error;
    return Part === undefined ? meanwhile : <Part {...props} />;
  };
}
