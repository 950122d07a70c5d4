import { Controller, Get, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowDue } from '../../use-cases/show/show-due.js';
import { queryChoice, queryPage, queryText } from '../form/query.js';
import { sendPage } from '../render.js';
import { DUE_STATES, DuePage } from './due.view.js';

@Controller('due')
export class DueController {
  constructor(private readonly showDue: ShowDue) {}

  @Get()
  async page(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const filter = { text: queryText(query, 'text', 40), state: queryChoice(query, 'state', DUE_STATES) ?? 'now' };
    const screen = valueOrRefuse(await this.showDue.run(caller, { filter, page: queryPage(query) }));
    sendPage(reply, <DuePage caller={caller} screen={screen} />);
  }
}
