import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { Refusal } from '../../http/refusal.js';
import type { FieldProblem, Outcome } from '../../use-cases/outcome.js';
import { seeOther, sendPage } from '../render.js';
import { pageProblems } from './page-problems.js';

/**
 * Ends every form: on to the result when it was taken, the form again with what is wrong when a field was not,
 * a page of its own for anything else.
 */
export function finishForm<T>(
  reply: FastifyReply,
  outcome: Outcome<T>,
  onTo: (value: T) => string,
  again: (problems: readonly FieldProblem[]) => VNode,
): void {
  if (outcome.ok) seeOther(reply, onTo(outcome.value));
  else if (outcome.problem.kind === 'invalid') sendPage(reply, again(pageProblems(outcome.problem.fields)), 422);
  else if (outcome.problem.kind === 'conflict') {
    sendPage(reply, again([{ field: 'form', message: outcome.problem.message }]), 409);
  } else throw new Refusal(outcome.problem);
}
