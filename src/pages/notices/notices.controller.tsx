import { join } from 'node:path';
import { Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Config } from '../../config.js';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { SendAgain } from '../../use-cases/notices/send-again.js';
import { ShowNotice } from '../../use-cases/show/show-notice.js';
import { ShowNotices } from '../../use-cases/show/show-notices.js';
import { queryChoice, queryPage, queryText } from '../form/query.js';
import { seeOther, sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { NoticePage } from './notice.view.js';
import { NoticesPage } from './notices.view.js';

const STATES = ['waiting', 'sent', 'dead', 'bounced', 'cancelled'] as const;

/**
 * A mail shown as its reader sees it carries its own styles. It is cut off from everything: an origin of its own,
 * no script, no form, no request anywhere.
 */
const MAIL_POLICY =
  "sandbox allow-top-navigation-by-user-activation; default-src 'none'; style-src 'unsafe-inline'; img-src data:";

@Controller('notices')
export class NoticesController {
  constructor(
    private readonly config: Config,
    private readonly showNotices: ShowNotices,
    private readonly showNotice: ShowNotice,
    private readonly sendAgain: SendAgain,
  ) {}

  @Get()
  async list(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const state = queryChoice(query, 'state', STATES);
    const screen = valueOrRefuse(await this.showNotices.run(caller, { state, page: queryPage(query) }));
    const mailFolder = this.config.smtpUrl === null ? join(this.config.dataDir, 'mail') : null;
    sendPage(
      reply,
      <NoticesPage
        caller={caller}
        screen={screen}
        mailFolder={mailFolder}
        said={saidWords(queryText(query, 'said'))}
      />,
    );
  }

  @Get(':noticeId')
  async page(
    @FromCaller() caller: Caller,
    @Param('noticeId', IdPipe) noticeId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const notice = valueOrRefuse(await this.showNotice.run(caller, { noticeId }));
    sendPage(reply, <NoticePage caller={caller} notice={notice} />);
  }

  @Get(':noticeId/mail')
  async mail(
    @FromCaller() caller: Caller,
    @Param('noticeId', IdPipe) noticeId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { bodyHtml } = valueOrRefuse(await this.showNotice.run(caller, { noticeId }));
    if (bodyHtml === '') throw new Refusal({ kind: 'not-found', what: 'mail to show' });
    reply.header('content-security-policy', MAIL_POLICY).type('text/html; charset=utf-8').send(bodyHtml);
  }

  @Post(':noticeId/again')
  async again(
    @FromCaller() caller: Caller,
    @Param('noticeId', IdPipe) noticeId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    valueOrRefuse(await this.sendAgain.run(caller, { noticeId }));
    seeOther(reply, '/notices?said=notice-again');
  }
}
