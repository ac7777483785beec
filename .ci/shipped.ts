/** What must hold of other people's packages that are shipped, as rules over what npm wrote. */

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
  readonly link?: boolean;
}

export interface Lock {
  readonly packages: Readonly<Record<string, Locked>>;
}

/**
 * Licences that let everybody ship with no more than a notice, by their SPDX names
 * (spdx.org/licenses); each is approved by the OSI (names from memory).
 */
const PERMISSIVE: ReadonlySet<string> = new Set([
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'ISC',
  'MIT',
  'Unlicense',
]);

/** SHA-512 as Subresource Integrity writes it; npm gives no other for what it has now. */
const INTEGRITY = /^sha512-[\w+/]{86}==$/;

const nameOf = (path: string): string => path.slice(path.lastIndexOf('node_modules/') + 13);
const others = ({ packages }: Lock): readonly (readonly [string, Locked])[] =>
  Object.entries(packages).filter(([path, { link }]) => path !== '' && link !== true);

const isShipped = ({ dev, devOptional, optional }: Locked): boolean =>
  !dev && !devOptional && !optional;

/** Names of the packages that the app's own stand on, themselves included. */
export const shippedNames = (lock: Lock): readonly string[] =>
  others(lock)
    .filter(([, each]) => isShipped(each))
    .map(([path]) => nameOf(path));

/** "(MIT OR Apache-2.0)" lets one choose; "A AND B" asks for both. */
const isPermissive = (licence: string): boolean =>
  licence
    .replace(/[()]/g, '')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((name) => PERMISSIVE.has(name.trim())));

/** What is wrong in the lock: any package without a hash, a shipped one with a script or licence. */
export function lockProblems(lock: Lock): readonly string[] {
  return others(lock).flatMap(([path, each]) => {
    const name = `${nameOf(path)} ${each.version ?? ''}`;
    const problems = INTEGRITY.test(each.integrity ?? '') ? [] : [`${name}: no SHA-512`];
    if (!isShipped(each)) return problems;
    if (each.hasInstallScript) problems.push(`${name}: runs a script when it is installed`);
    if (!isPermissive(each.license ?? ''))
      problems.push(`${name}: licence ${each.license ?? 'not named'}`);
    return problems;
  });
}

/** Packages in the built app, by the headings of the licences that the bundler collected. */
export const bundledNames = (licences: string): readonly string[] =>
  [...licences.matchAll(/^## (\S+) - /gm)].map(([, name = '']) => name);

/** The package that an import names, if it is one. */
export function packageOf(target: string): string | undefined {
  if (/^[./]|^node:|^virtual:/.test(target)) return undefined;
  return /^(@[^/]+\/)?[^/?]+/.exec(target)?.[0];
}

export type Advice =
  | { readonly asked: true; readonly grave: readonly string[] }
  | { readonly asked: false; readonly why: string };

/** Severities of npm's report from "moderate" on (version 2 of its format, from memory). */
const GRAVE: ReadonlySet<string> = new Set(['moderate', 'high', 'critical']);

/** What `npm audit --json` said, or why it could not say anything. */
export function adviceIn(output: string): Advice {
  let report: { vulnerabilities?: Record<string, { severity?: string }>; message?: string };
  try {
    report = JSON.parse(output);
  } catch {
    return { asked: false, why: 'no answer' };
  }
  const { vulnerabilities, message } = report ?? {};
  if (typeof vulnerabilities !== 'object' || vulnerabilities === null)
    return {
      asked: false,
      why: String(message ?? 'an answer without a report').split(' - ')[0] ?? '',
    };
  const grave = Object.entries(vulnerabilities)
    // A severity that is not known is looked at, not passed over.
    .filter(([, { severity = '' }]) => GRAVE.has(severity) || !['info', 'low'].includes(severity))
    .map(([name, { severity }]) => `${name}: ${severity ?? 'no severity'}`);
  return { asked: true, grave };
}
