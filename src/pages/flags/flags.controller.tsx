import { Controller, Get, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { valueOrRefuse } from '../../http/refusal.js';
import { FLAG_RULES } from '../../rules/flags/flag.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowFlags } from '../../use-cases/show/show-flags.js';
import { queryChoice, queryPage, queryText } from '../form/query.js';
import { sendPage } from '../render.js';
import { FlagsPage } from './flags.view.js';

@Controller('flags')
export class FlagsController {
  constructor(private readonly showFlags: ShowFlags) {}

  @Get()
  async page(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const filter = {
      text: queryText(query, 'text', 40),
      severity: queryChoice(query, 'severity', ['stop', 'limit', 'watch'] as const),
      rule: queryChoice(query, 'rule', FLAG_RULES),
    };
    const screen = valueOrRefuse(await this.showFlags.run(caller, { filter, page: queryPage(query) }));
    sendPage(reply, <FlagsPage caller={caller} screen={screen} />);
  }
}
