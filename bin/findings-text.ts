import type { Finding, Level } from '../lib/findings/finding.js';
import type { Io } from './io.js';

const ORDER: readonly Level[] = ['stop', 'warn', 'note'];

/** What a finding says, with its field in front where the sentence does not begin with it. */
const named = (f: Finding): string => (f.message.startsWith(f.where) ? f.message : `${f.where}: ${f.message}`);

/** A line for each finding, the gravest first. */
export const findingsText = (findings: readonly Finding[]): string =>
  [
    ...new Set(ORDER.flatMap(level => findings.filter(f => f.level === level).map(f => `${f.level}: ${named(f)}\n`))),
  ].join('');

/** Says the findings; if quiet, only those that stop the work. */
export function sayFindings(findings: readonly Finding[], quiet: boolean, io: Io): void {
  const said = quiet ? findings.filter(f => f.level === 'stop') : findings;
  if (said.length > 0) io.err(findingsText(said));
}
