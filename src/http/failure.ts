import { HttpException } from '@nestjs/common';
import type { FieldProblem, Problem } from '../use-cases/outcome.js';
import { Elsewhere } from './elsewhere.js';
import { problemStatus } from './problem-status.js';
import { Refusal } from './refusal.js';

/** What is told when a request could not be answered. Never a stack, a query or a file name. */
export interface Failure {
  readonly status: number;
  /** What it is to a program: a use case's problem, or one of the ways a request itself goes wrong. */
  readonly kind: string;
  readonly title: string;
  readonly text: string;
  /** The fields to mend, when that is what was wrong. */
  readonly fields: readonly FieldProblem[];
}

type Words = Pick<Failure, 'kind' | 'title' | 'text'>;

const KNOWN: Readonly<Record<number, Words>> = {
  400: {
    kind: 'unreadable',
    title: 'That could not be read',
    text: 'The request was not in a form the service understands. Go back and send it again.',
  },
  401: { kind: 'not-signed-in', title: 'Sign in first', text: 'This needs somebody signed in.' },
  403: {
    kind: 'not-accepted',
    title: 'Not from here',
    text: 'This request was not accepted. Open the page afresh and send the form again.',
  },
  404: {
    kind: 'not-found',
    title: 'Nothing here',
    text: 'There is nothing at this address, or it belongs to another yard.',
  },
  405: { kind: 'method-not-allowed', title: 'Not that way', text: 'This address does not take that kind of request.' },
  413: {
    kind: 'too-large',
    title: 'Too big',
    text: 'What was sent is larger than the service takes. Send smaller or fewer photos.',
  },
  415: { kind: 'wrong-media-type', title: 'Not that kind of file', text: 'The service does not take that media type.' },
  429: { kind: 'too-many-requests', title: 'Too many tries', text: 'Wait a few minutes, then try again.' },
};

const UNKNOWN: Words = {
  kind: 'failed',
  title: 'Something broke on our side',
  text: 'Nothing half-done was kept. Try again; if it stays, tell whoever runs this service the time it happened.',
};

/** Words and status for anything that was thrown while a request was being answered. */
export function failureOf(thrown: unknown): Failure {
  if (thrown instanceof Refusal) {
    const { problem } = thrown;
    const fields = problem.kind === 'invalid' ? problem.fields : [];
    return { status: problemStatus(problem), fields, kind: problem.kind, ...problemWords(problem) };
  }
  const status = statusOf(thrown);
  return { status, fields: [], ...(KNOWN[status] ?? UNKNOWN) };
}

function problemWords(problem: Problem): Pick<Failure, 'title' | 'text'> {
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
