import { Body, Controller, Get, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { valueOrRefuse } from '../../http/refusal.js';
import { parseCivilDate } from '../../rules/calendar/civil-date.js';
import type { Caller } from '../../use-cases/caller.js';
import { AnswerItem } from '../../use-cases/notices/answer-item.js';
import { ShowItem } from '../../use-cases/notices/show-item.js';
import { NOTHING_TYPED } from '../components/field.js';
import { finishForm } from '../form/finish-form.js';
import { queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { ANSWERS, AnswerPage } from './answer.view.js';

/** An item's key names trailer, check, round and person, so it is longer than most of what stands in an address. */
const LONGEST_KEY = 400;

/** Where a letter leads to be answered. It asks before anything changes: a mail scanner's visit is no answer. */
@Controller('answer')
export class AnswerController {
  constructor(
    private readonly showItem: ShowItem,
    private readonly answerItem: AnswerItem,
  ) {}

  @Get()
  async form(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const itemKey = queryText(query, 'item', LONGEST_KEY) ?? '';
    const screen = valueOrRefuse(await this.showItem.run(caller, { itemKey }));
    sendPage(reply, <AnswerPage caller={caller} screen={screen} typed={NOTHING_TYPED} />);
  }

  @Post()
  async answer(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const screen = valueOrRefuse(await this.showItem.run(caller, { itemKey: form.need('item') }));
    const outcome = await this.answerItem.run(caller, {
      itemKey: screen.itemKey,
      answer: ANSWERS.find((answer) => answer === form.text('answer')) ?? null,
      until: parseCivilDate(form.need('until')),
      doneOn: parseCivilDate(form.need('doneOn')),
      reason: form.text('reason'),
    });
    finishForm(
      reply,
      outcome,
      () => `/trailers/${screen.trailer.id}?said=answer-kept#due`,
      (problems) => <AnswerPage caller={caller} screen={screen} typed={form.typed(problems)} />,
    );
  }
}
