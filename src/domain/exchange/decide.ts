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

/** A programme that came in, its signatures verified. */
export interface Sender {
  readonly id: string;
  readonly revision: number;
  readonly text: string;
  /** The key whose signature was right. None: unsigned. */
  readonly key: string | null;
  /** Keys that this one came after, each change signed by the key before it. */
  readonly was: readonly string[];
}

/** A programme that is here. */
export interface Kept {
  /** Under which this phone keeps it: the programme's id, or that with a number behind a point. */
  readonly local: string;
  readonly id: string;
  readonly revision: number;
  readonly text: string;
  readonly key: string | null;
  /** Keys that its leader has replaced. */
  readonly retired: readonly string[];
}

/**
 * `keep` stores a new one, or an update in the place of what is here, log and place carried over.
 * `keep-apart` stores it beside what is here, as a programme of its own. `take-over` is `keep`
 * after six digits were compared, or over other content of the same revision.
 */
export type Acceptance = 'keep' | 'keep-apart' | 'take-over';

/** What a programme that came is to this phone, and what may be done with it. */
export interface Decision {
  readonly verdict: Verdict;
  /** Which of those that are here it is about. */
  readonly about?: Kept;
  /** What may be done, the usual one first. */
  readonly choices: readonly Acceptance[];
}

const CHOICES: Readonly<Record<Verdict['kind'], readonly Acceptance[]>> = {
  new: ['keep'],
  same: [],
  update: ['keep'],
  older: [],
  conflict: ['take-over'],
  copy: ['keep-apart'],
  rotated: ['keep'],
  retired: [],
  'key-changed': ['take-over', 'keep-apart'],
};

const decision = (verdict: Verdict, about?: Kept): Decision => ({
  verdict,
  choices: CHOICES[verdict.kind],
  ...(about === undefined ? {} : { about }),
});

/** By revision, for a sender who is known: by the same key, or one that the old key signed. */
function byRevision(next: Sender, about: Kept, kind: 'update' | 'rotated'): Decision {
  if (next.revision < about.revision)
    return decision({ kind: 'older', stored: about.revision }, about);
  if (next.revision === about.revision) return decision({ kind: 'conflict' }, about);
  return decision({ kind, from: about.revision }, about);
}

/**
 * What to make of a programme that came in. The sender is the programme's id with the signing
 * key: only the same key, or one that it signed, may replace what is here by revision alone.
 * What is unsigned never replaces anything.
 */
export function decide(next: Sender, kept: readonly Kept[]): Decision {
  const here = kept.filter(({ id }) => id === next.id);
  const [first] = here;
  if (first === undefined) return decision({ kind: 'new' });
  const same = here.find(
    ({ text, key }) => text === next.text && (key === next.key || next.key === null),
  );
  if (same !== undefined) return decision({ kind: 'same' }, same);
  const { key } = next;
  if (key === null) return decision({ kind: 'copy' }, first);
  const sameKey = here.find((each) => each.key === key);
  if (sameKey !== undefined) return byRevision(next, sameKey, 'update');
  const follows = here.find((each) => each.key !== null && next.was.includes(each.key));
  if (follows !== undefined) return byRevision(next, follows, 'rotated');
  const retired = here.find((each) => each.retired.includes(key));
  if (retired !== undefined) return decision({ kind: 'retired' }, retired);
  return decision({ kind: 'key-changed', from: first.revision }, first);
}

/** The id under which another of the same name is kept: no programme's own id has a point. */
export function apartId(id: string, taken: readonly string[]): string {
  for (let n = 2; ; n++) {
    const local = `${id}.${n}`;
    if (!taken.includes(local)) return local;
  }
}

/** The programme's own id, of an id under which the phone keeps one. */
export const ownId = (local: string): string => local.replace(/\.\d+$/, '');

/**
 * Under which id and with which retired keys a programme is kept. Only a change that the old key
 * signed, which is then among those that the sender was, retires it: digits that were compared
 * wrongly must not lock the true leader out.
 */
export function placeOf(
  next: Sender,
  { about }: Decision,
  choice: Acceptance,
  taken: readonly string[],
): { readonly local: string; readonly retired: readonly string[] } {
  if (about === undefined) {
    return {
      local: taken.includes(next.id) ? apartId(next.id, taken) : next.id,
      retired: next.was,
    };
  }
  if (choice === 'keep-apart') return { local: apartId(next.id, taken), retired: next.was };
  const retired = [...new Set([...about.retired, ...next.was])];
  return { local: about.local, retired: retired.filter((key) => key !== next.key) };
}
