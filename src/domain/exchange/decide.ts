/** What an incoming programme is to what is stored. */
export type Verdict =
  /** Nothing of this id is here. */
  | { readonly kind: 'new' }
  /** The same bytes are here. */
  | { readonly kind: 'same' }
  /** A later revision by the same key. */
  | { readonly kind: 'update'; readonly from: number }
  /** An earlier revision by the same key: never stored over the later one. */
  | { readonly kind: 'older'; readonly stored: number }
  /** The same revision by the same key, with other content. */
  | { readonly kind: 'conflict' }
  /** Unsigned, while something of this id is here. */
  | { readonly kind: 'copy' }
  /** A later revision by a new key that the old one signed. */
  | { readonly kind: 'rotated'; readonly from: number }
  /** Signed with a key that its leader has replaced since: never stored. */
  | { readonly kind: 'retired' }
  /** Signed by a key that nothing here vouches for. */
  | { readonly kind: 'key-changed'; readonly from: number };
