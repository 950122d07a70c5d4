import { Controller, Get, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { valueOrRefuse } from '../../http/refusal.js';
import { addMonths, type CivilDate, parseCivilDate } from '../../rules/calendar/civil-date.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowTimeline, type TimelineInput } from '../../use-cases/show/show-timeline.js';
import { queryChoice, queryPage, queryText } from '../form/query.js';
import { readTrailerFilter } from '../form/trailer-filter.js';
import { sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { TimelinePage } from './timeline.view.js';

/** Jobs are booked no further ahead; as far back something may still be looked up. */
const MONTHS_EITHER_WAY = 36;

@Controller('timeline')
export class TimelineController {
  constructor(private readonly showTimeline: ShowTimeline) {}

  @Get()
  async page(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const input: TimelineInput = {
      filter: readTrailerFilter(query),
      which: queryChoice(query, 'show', ['all'] as const) ?? 'busy',
      from: firstDay(queryText(query, 'from'), caller.today),
      weeks: ({ '3': 3, '4': 4 } as const)[queryText(query, 'weeks') ?? ''] ?? 2,
      page: queryPage(query),
    };
    const screen = valueOrRefuse(await this.showTimeline.run(caller, input));
    sendPage(reply, <TimelinePage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }
}

function firstDay(text: string | null, today: CivilDate): CivilDate | null {
  const day = text === null ? null : parseCivilDate(text);
  if (day === null) return null;
  return day < addMonths(today, -MONTHS_EITHER_WAY) || day > addMonths(today, MONTHS_EITHER_WAY) ? null : day;
}
