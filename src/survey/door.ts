import * as z from 'zod/mini';
import { InputError, type Problem, problem, shown } from './inputError.js';

type Issue = z.core.$ZodIssue;
type RawIssue = z.core.$ZodRawIssue;

/**
 * Checks an input against the one schema that describes it. Every public function calls this at its door; calls between
 * steps do not check again.
 *
 * @param root - a word put before every path, for functions that take several arguments
 * @returns the input itself, so that nothing is copied, dropped or corrected
 * @throws InputError with one problem for each mistake
 */
export function admit<T>(schema: z.ZodMiniType<T>, input: unknown, root = ''): T {
  const result = z.safeParse(schema, input);
  if (!result.success) throw new InputError(result.error.issues.flatMap((issue) => problemsOf(issue, input, root)));
  return input as T;
}

/** What a schema check of our own found: `code`, `expected` and, if given, `received` come out in the problem as they stand. */
interface Fault {
  readonly code: string;
  /** From the value that is checked. */
  readonly path?: readonly (string | number)[];
  readonly expected: string;
  readonly received?: string;
}

/** A schema check of our own that may find several faults. */
export const demandNone = <T>(faults: (value: T) => readonly Fault[]) =>
  z.check<T>(({ value, issues }) => {
    for (const { path = [], ...params } of faults(value)) {
      const issue: RawIssue = { code: 'custom', input: value, path: [...path], params, continue: true };
      issues.push(issue);
    }
  });

/** A schema check of our own for one condition. */
export const demand = <T>(test: (value: T) => boolean, code: string, expected: string, received?: (value: T) => string) =>
  demandNone<T>((value) => (test(value) ? [] : [{ code, expected, ...(received && { received: received(value) }) }]));

function problemsOf(issue: Issue, input: unknown, root: string): Problem[] {
  const at = pathText(root, issue.path);
  const received = shown(valueAt(input, issue.path));
  switch (issue.code) {
    case 'invalid_type':
      return [wrongType(issue, at, valueAt(input, issue.path))];
    case 'unrecognized_keys':
      return issue.keys.map((key) =>
        problem(
          'unknown-field',
          pathText(root, [...issue.path, key]),
          'no such field',
          shown(valueAt(input, [...issue.path, key])),
        ),
      );
    case 'invalid_value':
      return [problem('not-one-of', at, `one of ${issue.values.map((value) => shown(value)).join(', ')}`, received)];
    case 'too_small':
      return [
        problem('too-small', at, limitText(issue.inclusive ? 'at least' : 'more than', issue.minimum, issue.origin), received),
      ];
    case 'too_big':
      return [
        problem('too-large', at, limitText(issue.inclusive ? 'at most' : 'less than', issue.maximum, issue.origin), received),
      ];
    case 'invalid_union':
      return closestBranch(issue.errors).flatMap((inner) =>
        problemsOf({ ...inner, path: [...issue.path, ...inner.path] }, input, root),
      );
    case 'invalid_key':
      return [problem('unknown-field', at, 'a known key', shown(issue.path[issue.path.length - 1]))];
    case 'custom': {
      const { code, expected, received: own } = issue.params as { code: string; expected: string; received?: string };
      return [problem(code, at, expected, own ?? received)];
    }
    default:
      return [problem('invalid', at, 'a valid value', received)];
  }
}

function wrongType(issue: z.core.$ZodIssueInvalidType, at: string, value: unknown): Problem {
  if (value === undefined) return problem('missing', at, article(issue.expected), 'nothing');
  if (typeof value === 'number' && !Number.isFinite(value)) return problem('not-finite', at, 'a finite number', String(value));
  return problem('wrong-type', at, article(issue.expected), shown(value));
}

const article = (type: string): string =>
  type === 'array' ? 'a list' : type === 'int' ? 'a whole number' : /^[aeiou]/.test(type) ? `an ${type}` : `a ${type}`;

const limitText = (words: string, limit: number | bigint, origin: string): string =>
  origin === 'array'
    ? `${words} ${limit} in the list`
    : origin === 'string'
      ? `${words} ${limit} characters`
      : `${words} ${limit}`;

/**
 * Of the forms an input may take, the one it resembles most, so that the problems speak of the form that was meant. A
 * field that the form does not know tells more than one that is missing or wrong.
 */
function closestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  const distance = (issues: readonly Issue[]): number =>
    issues.reduce(
      (sum, issue) =>
        sum +
        (issue.code === 'unrecognized_keys' ? 2 * issue.keys.length : 1) +
        (issue.path.length === 0 && issue.code === 'invalid_type' ? 100 : 0),
      0,
    );
  return branches.reduce((best, branch) => (distance(branch) < distance(best) ? branch : best));
}

function pathText(root: string, path: readonly PropertyKey[]): string {
  let text = root;
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (/^[A-Za-z_$][\w$-]*$/.test(String(step))) text += text === '' ? String(step) : `.${String(step)}`;
    else text += `[${JSON.stringify(String(step))}]`;
  }
  return text;
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let value = input;
  for (const step of path) {
    if (value === null || typeof value !== 'object' || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}
