import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { calculate, computationNamed } from './use-cases/calc/calculate.js';
import type { Computation } from './use-cases/calc/computation.js';
import { COMPUTATIONS } from './use-cases/calc/computations.js';

// `npm run -s calc -- NAME`: reads JSON from standard input, or from the file named after it, and writes JSON. With no
// database and no service. `list` names every computation; `NAME --schema` says what goes in and comes out, with an
// example; `NAME --example` works that example out. Exit code 2: what was asked or given cannot be taken.

const USAGE = `Usage:
  npm run -s calc -- list
  npm run -s calc -- NAME [FILE]      input from FILE, or from standard input
  npm run -s calc -- NAME --schema    what goes in and comes out, with an example
  npm run -s calc -- NAME --example   that example, worked out`;

/** Something the person at the terminal can mend. */
class CalcError extends Error {}

function main(): string {
  const { values, positionals } = readArguments();
  const [name, file, ...more] = positionals;
  if (name === undefined || more.length > 0) throw new CalcError(USAGE);
  if (name === 'list') return COMPUTATIONS.map((one) => `${one.name.padEnd(34)} ${one.about}`).join('\n');
  const found = computationNamed(name);
  if (found === null) throw new CalcError(`There is no computation "${name}".${near(name)}`);
  if (values.schema) return pretty(schemaOf(found));
  const outcome = calculate(name, values.example ? found.example : readInput(file));
  if (outcome.ok) return pretty(outcome.value);
  const { problem } = outcome;
  if (problem.kind !== 'invalid') throw new CalcError(problem.kind);
  throw new CalcError(problem.fields.map(({ field, message }) => `${field}: ${message}`).join('\n'));
}

function readArguments() {
  const options = { schema: { type: 'boolean' }, example: { type: 'boolean' } } as const;
  try {
    return parseArgs({ options, allowPositionals: true });
  } catch (error) {
    throw new CalcError(`${(error as Error).message}\n${USAGE}`);
  }
}

function readInput(file: string | undefined): unknown {
  let text: string;
  try {
    text = readFileSync(file ?? process.stdin.fd, 'utf8');
  } catch (error) {
    throw new CalcError(`Cannot read ${file ?? 'standard input'}: ${(error as Error).message}`);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new CalcError(`The input is not JSON: ${(error as Error).message}`);
  }
}

function schemaOf({ name, about, source, input, output, example }: Computation): object {
  const written = (shape: z.ZodType, io: 'input' | 'output') => z.toJSONSchema(shape, { io });
  return { name, about, source, input: written(input.strict(), 'input'), output: written(output, 'output'), example };
}

/** Names that share a word with what was typed. */
function near(name: string): string {
  const typed = name.split('-');
  const close = COMPUTATIONS.filter((one) => one.name.split('-').some((word) => typed.includes(word)));
  const names = close.map((one) => `  ${one.name}`).join('\n');
  return names === '' ? ' `calc list` names them all.' : ` Is it one of these?\n${names}`;
}

function pretty(value: object): string {
  return JSON.stringify(value, null, 2);
}

try {
  console.log(main());
} catch (error) {
  if (!(error instanceof CalcError)) throw error;
  console.error(error.message);
  process.exitCode = 2;
}
