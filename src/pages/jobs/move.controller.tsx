import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { ChangeJob } from '../../use-cases/jobs/change-job.js';
import { ShowMove } from '../../use-cases/show/show-move.js';
import { ShowMoves } from '../../use-cases/show/show-moves.js';
import { pageProblems } from '../form/page-problems.js';
import { queryPage } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { readTrailerFilter } from '../form/trailer-filter.js';
import { seeOther, sendPage } from '../render.js';
import { moveInShort } from '../words/move-words.js';
import { MovePage } from './move.view.js';
import { MovesPage } from './moves.view.js';

/** Gives a job to another trailer: which there are, what one of them answers, and the move itself. */
@Controller('jobs/:jobId/move')
export class MoveController {
  constructor(
    private readonly showMoves: ShowMoves,
    private readonly showMove: ShowMove,
    private readonly changeJob: ChangeJob,
  ) {}

  @Get()
  async list(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const input = { jobId, filter: readTrailerFilter(query), page: queryPage(query) };
    const screen = valueOrRefuse(await this.showMoves.run(caller, input));
    sendPage(reply, <MovesPage caller={caller} screen={screen} />);
  }

  @Get(':trailerId')
  async ask(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showMove.run(caller, { jobId, trailerId }));
    sendPage(reply, <MovePage caller={caller} screen={screen} back={null} wrong={null} />);
  }

  /** The same answer in short, for the time line to show while a job is held over a row. */
  @Get(':trailerId/answer')
  async answer(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showMove.run(caller, { jobId, trailerId }));
    const names = { machines: screen.machineNames, checkKinds: screen.checkKindNames };
    reply.send({ verdict: screen.answer.fit.verdict, says: moveInShort(screen.answer, names).join(' ') });
  }

  @Post(':trailerId')
  async move(
    @FromCaller() caller: Caller,
    @Param('jobId', IdPipe) jobId: string,
    @Param('trailerId', IdPipe) trailerId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = new FormReader(body);
    const back = timelineAddress(form.text('back'));
    const screen = valueOrRefuse(await this.showMove.run(caller, { jobId, trailerId }));
    const again = (wrong: string) =>
      sendPage(reply, <MovePage caller={caller} screen={screen} back={back} wrong={wrong} />, 409);
    if (screen.asks && form.text('despite') !== 'yes') return again('Not moved yet: look at the answer first.');
    const outcome = await this.changeJob.run(caller, { jobId, trailerId });
    if (outcome.ok) return seeOther(reply, said(back ?? `/jobs/${jobId}`));
    if (outcome.problem.kind === 'conflict') return again(outcome.problem.message);
    if (outcome.problem.kind !== 'invalid') throw new Refusal(outcome.problem);
    again(
      pageProblems(outcome.problem.fields)
        .map(({ message }) => message)
        .join(' '),
    );
  }
}

/** Back to the time line as it stood; an address of anywhere else is dropped. */
function timelineAddress(text: string | null): string | null {
  return text !== null && /^\/timeline(\?[\w=&%.+-]*)?$/.test(text) ? text : null;
}

function said(address: string): string {
  return `${address}${address.includes('?') ? '&' : '?'}said=job-moved`;
}
