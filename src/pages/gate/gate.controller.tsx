import { Controller, Get, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowGate } from '../../use-cases/show/show-gate.js';
import { queryPage, queryText } from '../form/query.js';
import { readTrailerFilter } from '../form/trailer-filter.js';
import { sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { GatePage } from './gate.view.js';

@Controller()
export class GateController {
  constructor(private readonly showGate: ShowGate) {}

  @Get()
  async page(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const screen = valueOrRefuse(
      await this.showGate.run(caller, { filter: readTrailerFilter(query), page: queryPage(query) }),
    );
    sendPage(reply, <GatePage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }
}
