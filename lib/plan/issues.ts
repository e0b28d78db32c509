import type * as z from 'zod/mini';
import { allowedNames } from '../findings/nearest.js';
import type { Issue } from '../findings/unusable.js';
import { fieldName, type Path, show, type Written } from './written.js';

type SchemaIssue = z.core.$ZodIssue;

/** What was written for a field, or that nothing was. */
const valueAt = (written: Written, path: Path): string => written.fields.get(fieldName(path)) ?? 'missing';

/** Issues that say a value is altogether of another kind. */
const OTHER_KIND: readonly SchemaIssue['code'][] = ['invalid_type', 'invalid_value', 'invalid_union'];

const unknownKeys = (branch: readonly SchemaIssue[]): number =>
  branch.reduce((sum, i) => sum + (i.code === 'unrecognized_keys' && i.path.length === 0 ? i.keys.length : 0), 0);

/** What is wrong inside the alternative of a union that is meant: the one of the value's kind; of several, where all that is wrong is inside,
 * the first that knows most of its keys. Nothing where there is no such one. */
function insideUnion(issue: SchemaIssue): readonly SchemaIssue[] {
  if (issue.code !== 'invalid_union') return [];
  const ofKind = issue.errors.filter(
    branch => !branch.some(inner => inner.path.length === 0 && OTHER_KIND.includes(inner.code)),
  );
  if (ofKind.length < 2) return ofKind[0] ?? [];
  const inside = (branch: readonly SchemaIssue[]): boolean =>
    branch.every(i => i.path.length > 0 || i.code === 'unrecognized_keys');
  return ofKind.filter(inside).sort((a, b) => unknownKeys(a) - unknownKeys(b))[0] ?? [];
}

function fromSchema(written: Written, issue: SchemaIssue, above: Path): readonly Issue[] {
  const path: Path = [...above, ...(issue.path as Path)];
  if (issue.code === 'unrecognized_keys') {
    const known = issue.message.split(', ');
    return issue.keys.map(key => ({
      field: fieldName([...path, key]),
      value: 'not a key of the plan format',
      allowed: allowedNames(key, known),
    }));
  }
  const inside = insideUnion(issue);
  if (inside.length > 0) return inside.flatMap(inner => fromSchema(written, inner, path));
  const name = issue.code === 'invalid_key' ? issue.issues[0] : undefined;
  if (name) return [{ field: fieldName(path), value: `named ${show(String(path.at(-1)))}`, allowed: name.message }];
  return [{ field: fieldName(path), value: valueAt(written, path), allowed: issue.message }];
}

/** The issues of a schema, said of the plan: field, value as written, what is allowed; one for a field. */
export function planIssues(written: Written, issues: readonly SchemaIssue[]): readonly Issue[] {
  const all = issues.flatMap(issue => fromSchema(written, issue, []));
  return [...new Map(all.map(issue => [issue.field, issue])).values()];
}
