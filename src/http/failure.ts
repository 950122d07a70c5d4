import { HttpException } from '@nestjs/common';
import type { FieldProblem, Problem } from '../use-cases/outcome.js';
import { Elsewhere } from './elsewhere.js';
import { problemStatus } from './problem-status.js';
import { Refusal } from './refusal.js';

/** What is told when a request could not be answered. Never a stack, a query or a file name. */
export interface Failure {
  readonly status: number;
  readonly title: string;
  readonly text: string;
  /** The fields to mend, when that is what was wrong. */
  readonly fields: readonly FieldProblem[];
}

type Words = Pick<Failure, 'title' | 'text'>;

const KNOWN: Readonly<Record<number, Words>> = {
  400: {
    title: 'That could not be read',
    text: 'The request was not in a form the service understands. Go back and send it again.',
  },
  401: { title: 'Sign in first', text: 'This needs somebody signed in.' },
  403: {
    title: 'Not from here',
    text: 'This request was not accepted. Open the page afresh and send the form again.',
  },
  404: { title: 'Nothing here', text: 'There is nothing at this address, or it belongs to another yard.' },
  405: { title: 'Not that way', text: 'This address does not take that kind of request.' },
  413: { title: 'Too big', text: 'What was sent is larger than the service takes. Send smaller or fewer photos.' },
  415: { title: 'Not that kind of file', text: 'The service does not take that media type.' },
  429: { title: 'Too many tries', text: 'Wait a few minutes, then try again.' },
};

const UNKNOWN: Words = {
  title: 'Something broke on our side',
  text: 'Nothing half-done was kept. Try again; if it stays, tell whoever runs this service the time it happened.',
};

/** Words and status for anything that was thrown while a request was being answered. */
export function failureOf(thrown: unknown): Failure {
  if (thrown instanceof Refusal) {
    const { problem } = thrown;
    const fields = problem.kind === 'invalid' ? problem.fields : [];
    return { status: problemStatus(problem), fields, ...problemWords(problem) };
  }
  const status = statusOf(thrown);
  return { status, fields: [], ...(KNOWN[status] ?? UNKNOWN) };
}

function problemWords(problem: Problem): Words {
  switch (problem.kind) {
    case 'invalid':
      return { title: 'Something to mend', text: problem.fields.map(({ message }) => message).join(' ') };
    case 'not-found':
      return { title: 'Nothing here', text: `This yard has no such ${problem.what}.` };
    case 'not-allowed':
      return {
        title: 'Not yours to do',
        text: `This takes the role ${problem.needs} or wider. Ask an owner of the yard to do it, or to change your role.`,
      };
    case 'conflict':
      return { title: 'That does not go together', text: problem.message };
  }
}

/** Status of Nest's exceptions and of Fastify's own errors (bad JSON, too large a body); 500 for everything else. */
function statusOf(thrown: unknown): number {
  if (thrown instanceof Elsewhere) return thrown.status;
  if (thrown instanceof HttpException) return thrown.getStatus();
  if (!(thrown instanceof Error) || !('statusCode' in thrown)) return 500;
  const { statusCode } = thrown;
  return typeof statusCode === 'number' && statusCode >= 400 && statusCode < 500 ? statusCode : 500;
}
