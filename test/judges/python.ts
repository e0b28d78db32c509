import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** A Python that has the judge's libraries: ezdxf reads DXF, shapely compares areas. */
const CANDIDATES = ['python3', '/usr/bin/python3', 'python'];

const script = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const run = (python: string, args: readonly string[]) => spawnSync(python, ['-B', ...args], { encoding: 'utf8' });

/** The first Python on this machine that can judge; none where the outside libraries are not installed. */
export const python: string | undefined = CANDIDATES.find(p => run(p, ['-c', 'import ezdxf, shapely']).status === 0);

/** Why tests with the outside judge are skipped here, to be printed. */
export const WITHOUT_PYTHON = 'skipped: no Python with ezdxf and shapely on this machine (pip install ezdxf shapely)';

export interface Verdict {
  /** 0 nothing wrong, 1 something is */
  readonly status: number | null;
  /** one line for each thing wrong, and a last one with their number */
  readonly output: string;
}

function verdict(args: readonly string[]): Verdict {
  if (python === undefined) throw new Error(WITHOUT_PYTHON);
  const { status, stdout, stderr } = run(python, args);
  return { status, output: stdout + stderr };
}

/** Judges folders of written files: audit, areas, SVG against DXF, the assembled solids, the sheets. Of several folders, each line
 * starts with its folder's name.
 * @param only some of `files`, `assembly`, `sheets`; all unless given */
export const judgeFolders = (
  folders: readonly string[],
  only?: readonly ('files' | 'assembly' | 'sheets')[],
): Verdict => verdict([script('judge.py'), ...folders, ...(only ? ['--only', only.join(',')] : [])]);

export const judgeFolder = (folder: string, only?: readonly ('files' | 'assembly' | 'sheets')[]): Verdict =>
  judgeFolders([folder], only);

/** Writes the judge's own little example into folders named by what is spoilt in them; `right` is not spoilt. */
export const writeFixtures = (folder: string, faults: readonly string[]): Verdict =>
  verdict([script('fixture.py'), folder, ...faults]);
