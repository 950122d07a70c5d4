import { Get, Param, Post } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { SendAgain } from '../use-cases/notices/send-again.js';
import { ShowNotice } from '../use-cases/show/show-notice.js';
import { ShowNotices } from '../use-cases/show/show-notices.js';
import { JsonBody, type JsonObject, refuseFields } from './body.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { NOTICE_QUEUED, NOTICE_READ, NOTICES } from './schema/answer-schema.js';
import { listQuery, oneOf } from './schema/query-schema.js';
import { NOTHING_BODY } from './schema/use-schema.js';

const NOTICE_QUERY = listQuery({
  state: oneOf(['waiting', 'sent', 'dead', 'bounced', 'cancelled'], 'dead: given up. bounced: came back.'),
});

@ApiController('Notices')
export class NoticesApi {
  constructor(
    private readonly showNotices: ShowNotices,
    private readonly showNotice: ShowNotice,
    private readonly sendAgain: SendAgain,
  ) {}

  @Get('notices')
  @Answers(200, NOTICES, 'Mails of the yard: to whom, why, and what became of them')
  async list(@FromCaller() caller: Caller, @ByQuery(NOTICE_QUERY) query: z.infer<typeof NOTICE_QUERY>) {
    const screen = await this.showNotices.run(caller, { state: query.state ?? null, page: query.page });
    const { notices, undelivered, page, perPage } = valueOrRefuse(screen);
    return { ...notices, page, perPage, undelivered };
  }

  @Get('notices/:noticeId')
  @Answers(200, NOTICE_READ, 'One notice with its mail and the answers to it')
  async one(@FromCaller() caller: Caller, @Param('noticeId', IdPipe) noticeId: string) {
    return valueOrRefuse(await this.showNotice.run(caller, { noticeId }));
  }

  @Post('notices/:noticeId/send-again')
  @Answers(200, NOTICE_QUEUED, 'Put a notice that was given up or came back into the queue again')
  async again(
    @FromCaller() caller: Caller,
    @Param('noticeId', IdPipe) noticeId: string,
    @JsonBody(NOTHING_BODY) body: JsonObject,
  ) {
    refuseFields(body);
    return valueOrRefuse(await this.sendAgain.run(caller, { noticeId }));
  }
}
