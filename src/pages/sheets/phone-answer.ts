import type { FastifyReply } from 'fastify';
import { Refusal } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import type { RecordCheck } from '../../use-cases/checks/record-check.js';
import { lineProblem, type ReadLine } from '../form/check-form.js';
import { pageProblems } from '../form/page-problems.js';
import type { FormReader } from '../form/read-form.js';
import { changedWords } from '../words/changed-words.js';
import { personMark } from './person-mark.js';
import { PERSON_HEADER, type SheetAnswer } from './sheet-answer.js';

/** Marks a page as one that a phone of this person may keep. */
export function forPhoneOf(reply: FastifyReply, caller: Caller): void {
  reply.header(PERSON_HEADER, personMark(caller));
}

/** Answers a phone that sent a sheet it had kept. */
export function answerPhone(
  reply: FastifyReply,
  form: FormReader,
  lines: readonly ReadLine[],
  trailerId: string,
  outcome: Awaited<ReturnType<RecordCheck['run']>>,
): void {
  if (outcome.ok) {
    const { checkRecordId, holdId, changed, sentAgain } = outcome.value;
    sendAnswer(reply, sentAgain ? 200 : 201, {
      kind: 'recorded',
      sendId: form.need('sendId'),
      record: `/trailers/${trailerId}/records/${checkRecordId}`,
      held: holdId !== null,
      sentAgain,
      changed: changed.map((one) => changedWords(one, trailerId)),
    });
  } else if (outcome.problem.kind === 'invalid') {
    const problems = pageProblems(outcome.problem.fields.map((one) => lineProblem(lines, one)));
    sendAnswer(reply, 422, { kind: 'refused', recordedBefore: false, problems });
  } else if (outcome.problem.kind === 'conflict') {
    const problems = [{ field: 'form', message: outcome.problem.message }];
    sendAnswer(reply, 409, { kind: 'refused', recordedBefore: true, problems });
  } else throw new Refusal(outcome.problem);
}

export function sendAnswer(reply: FastifyReply, status: number, answer: SheetAnswer): void {
  reply.status(status).type('application/json; charset=utf-8').send(answer);
}
