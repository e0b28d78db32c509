import { type Dirent, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { refuse } from '../findings/unusable.js';

const REPORT = 'report.json';

/** Files of the output contract whose names no report lists. */
const ALWAYS =
  /^(coupon\.(json|txt)|(assembled|exploded)\.(svg|png)|packet\.html|cutlist\.csv|templates\/[a-z0-9-]+\.pdf|solids\/[A-Za-z0-9-]+\.3mf)$/;

const FOLDERS = ['parts', 'sheets', 'layouts', 'templates', 'solids'];

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const texts = (list: unknown, key: string): string[] =>
  (Array.isArray(list) ? list : []).flatMap(item =>
    isRecord(item) && typeof item[key] === 'string' ? [item[key]] : [],
  );

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Files of hard templates: sheets, and one for each template on them. */
const templates = (list: unknown): string[] => [
  ...texts(list, 'file'),
  ...(Array.isArray(list) ? list : []).flatMap(sheet =>
    isRecord(sheet) && Array.isArray(sheet['templates'])
      ? sheet['templates'].map(id => `templates/${String(id)}.dxf`)
      : [],
  ),
];

/** Names of the files a report tells of; nothing if the text is no report of ours. */
function reportedFiles(text: string): Set<string> | undefined {
  const report = parsed(text);
  if (!isRecord(report) || report['rimwright'] !== 1) return undefined;
  const parts = texts(report['parts'], 'id').flatMap(id => ['', '-back', '-side', '-end'].map(s => `parts/${id}${s}`));
  const drawn = [
    ...texts(report['sheets'], 'file'),
    ...texts(report['sheets'], 'back'),
    ...templates(report['templates']),
  ];
  const sheets = drawn.map(f => f.replace(/\.dxf$/, ''));
  const pictures = texts(report['sheets'], 'picture').flatMap(f => [f, f.replace(/\.svg$/, '.png')]);
  return new Set([REPORT, ...pictures, ...[...parts, ...sheets].flatMap(f => [`${f}.dxf`, `${f}.svg`])]);
}

const nameIn = (entry: Dirent, under: string): string => (under ? `${under}/${entry.name}` : entry.name);

/** The first thing in a folder that is not in a set of ours. */
function stranger(folder: string, known: ReadonlySet<string>, under = ''): string | undefined {
  for (const entry of readdirSync(join(folder, under), { withFileTypes: true })) {
    const name = nameIn(entry, under);
    const fine = entry.isDirectory()
      ? under === '' && FOLDERS.includes(name)
      : entry.isFile() && (known.has(name) || ALWAYS.test(name));
    if (!fine) return name;
    const within = entry.isDirectory() ? stranger(folder, known, name) : undefined;
    if (within !== undefined) return within;
  }
  return undefined;
}

const isFile = (folder: string, name: string): boolean =>
  readdirSync(folder, { withFileTypes: true }).some(e => e.name === name && e.isFile());

/** Refuses a folder that holds anything but a set that was saved there: it would be lost. An empty folder is fine.
 * @throws Unusable naming the folder and the first thing that is not ours; the system's own errors */
export function requireOurs(folder: string, field: string): void {
  if (readdirSync(folder).length === 0) return;
  const report = isFile(folder, REPORT) ? reportedFiles(readFileSync(join(folder, REPORT), 'utf8')) : undefined;
  const other = report ? stranger(folder, report) : readdirSync(folder).sort()[0];
  if (other !== undefined)
    refuse(
      field,
      `${folder}, which holds ${other}`,
      'a new or empty folder, or one with nothing but files from an earlier run',
    );
}
