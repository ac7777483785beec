/**
 * `npm run hosting`: ready files for web hosts, so that every one of them sends what our own server
 * sends. Written into `docs/hosting`; a test says when they are no longer what this makes.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { cacheRule, SECURITY_HEADERS } from './headers.ts';
import { TYPES } from './serve.ts';

/** Where the example puts the app: a folder of the host's, and the path it is found under. */
export const EXAMPLE = { folder: '/srv/www', path: '/towpath/' } as const;

const KEPT = cacheRule('/assets/');
const ASKED = cacheRule('/');

/** Every header of a file, by whether its name carries a hash. */
const headers = (cache: string): readonly (readonly [string, string])[] => [
  ...Object.entries(SECURITY_HEADERS),
  ['Cache-Control', cache],
];

/** `text/css; charset=utf-8` is two things to most hosts. */
const bare = (type: string): string => type.replace(/;.*$/, '');

/** What is worth compressing: nothing that is compressed already. */
const TEXTS = [...new Set(Object.values(TYPES).filter((type) => type.includes('charset')))].map(
  bare,
);

/** Where a host takes pages for granted. */
const NOT_PAGES = TEXTS.filter((type) => type !== 'text/html').join(' ');

const about = (mark: string, how: string): string =>
  [
    'Towpath on a host of your own. Made by "npm run hosting" from .ci/headers.ts.',
    `Copy the folder dist to ${EXAMPLE.folder}${EXAMPLE.path.slice(0, -1)}, and change both names here as you like:`,
    'the app finds its files from wherever it stands. Serve it by https: without it a browser keeps',
    `nothing for use without signal. ${how}`,
  ]
    .map((line) => `${mark} ${line}`)
    .join('\n');

/** For nginx, to be included in a server block. */
export function nginx(): string {
  const { folder, path } = EXAMPLE;
  const add = (cache: string, indent: string): string =>
    headers(cache)
      .map(([name, value]) => `${indent}add_header ${name} "${value}" always;`)
      .join('\n');
  const types = Object.entries(TYPES)
    .map(([end, type]) => `        ${bare(type)} ${end.slice(1)};`)
    .join('\n');
  return `${about('#', 'Include this inside a server block of nginx.')}
location ${path} {
    root ${folder};
    index index.html;
    try_files $uri $uri/ =404;
    default_type application/octet-stream;
    types {
${types}
    }
    charset utf-8;
    charset_types ${NOT_PAGES};
    gzip on;
    gzip_vary on;
    gzip_types ${NOT_PAGES};
${add(ASKED, '    ')}

    # The names in here carry a hash of what is in them.
    location ${path}assets/ {
        # nginx sends either the headers of this place or those of the place around it.
${add(KEPT, '        ')}
    }
}
`;
}

/** For lighttpd, to be included in its configuration. */
export function lighttpd(): string {
  const { folder, path } = EXAMPLE;
  const list = (pairs: readonly (readonly [string, string])[], indent: string): string =>
    pairs.map(([name, value]) => `${indent}"${name}" => "${value}"`).join(',\n');
  return `${about('#', 'Include this in the configuration of lighttpd (on Debian with the package lighttpd-mod-deflate).')}
server.document-root = "${folder}"
server.modules += ( "mod_setenv", "mod_deflate" )
index-file.names = ( "index.html" )
mimetype.assign = (
${list(Object.entries(TYPES), '    ')},
    "" => "application/octet-stream"
)
deflate.mimetypes = ( ${TEXTS.map((type) => `"${type}"`).join(', ')} )
deflate.allowed-encodings = ( "gzip" )
$HTTP["url"] =~ "^${path}" {
    setenv.set-response-header = (
${list(headers(ASKED), '        ')}
    )
}
# The names in here carry a hash of what is in them.
$HTTP["url"] =~ "^${path}assets/" {
    setenv.set-response-header = (
${list(headers(KEPT), '        ')}
    )
}
`;
}

/** For Apache's mod_headers, as `.htaccess` beside index.html. */
export function htaccess(): string {
  const set = (cache: string, indent: string): string =>
    headers(cache)
      .map(([name, value]) => `${indent}Header always set ${name} "${value}"`)
      .join('\n');
  const types = Object.entries(TYPES)
    .map(([end, type]) => `AddType ${bare(type)} ${end}`)
    .join('\n');
  return `${about('#', 'Put this beside index.html as .htaccess.')}
${types}
AddDefaultCharset utf-8
<IfModule mod_deflate.c>
    AddOutputFilterByType DEFLATE ${TEXTS.join(' ')}
</IfModule>
<IfModule mod_headers.c>
${set(ASKED, '    ')}
    # The names under assets/ carry a hash of what is in them.
    <If "%{REQUEST_URI} =~ m#/assets/#">
${set(KEPT, '        ')}
    </If>
</IfModule>
`;
}

/** For hosts that read a file `_headers` at the top of a site. No two of its places overlap in a name. */
export function headersFile(): string {
  const block = (path: string, pairs: readonly (readonly [string, string])[]): string =>
    [path, ...pairs.map(([name, value]) => `  ${name}: ${value}`)].join('\n');
  const asked = ['/', '/index.html', '/sw.js', '/manifest.webmanifest'].map((path) =>
    block(path, [['Cache-Control', ASKED]]),
  );
  return `${about('#', 'Put this at the top of the site as _headers.')}
${block('/*', Object.entries(SECURITY_HEADERS))}
${asked.join('\n')}
# The names in here carry a hash of what is in them.
${block('/assets/*', [['Cache-Control', KEPT]])}
`;
}

/** The files of `docs/hosting`, and what makes each. */
export const FILES: Readonly<Record<string, () => string>> = {
  'nginx.conf': nginx,
  'lighttpd.conf': lighttpd,
  'apache.htaccess': htaccess,
  _headers: headersFile,
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = fileURLToPath(new URL('../docs/hosting/', import.meta.url));
  mkdirSync(folder, { recursive: true });
  for (const [name, make] of Object.entries(FILES)) writeFileSync(`${folder}${name}`, make());
}
