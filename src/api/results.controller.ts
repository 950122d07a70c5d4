import { Get } from '@nestjs/common';
import type { z } from 'zod';
import { FromCaller } from '../http/from-caller.js';
import { valueOrRefuse } from '../http/refusal.js';
import { FLAG_RULES } from '../rules/flags/flag.js';
import { yardDaysFrom } from '../rules/inspection/yard-days.js';
import type { Caller } from '../use-cases/caller.js';
import { ShowDue } from '../use-cases/show/show-due.js';
import { ShowFlags } from '../use-cases/show/show-flags.js';
import { Answers, ApiController } from './describe.js';
import { ByQuery } from './query.js';
import { DUE_LIST, FLAG_LIST } from './schema/answer-schema.js';
import { listQuery, oneOf, search } from './schema/query-schema.js';

const DUE_QUERY = listQuery({
  text: search('Part of the trailer’s number or name, or of the check’s name.'),
  state: oneOf(['now', 'later', 'unknown', 'all'], 'now: overdue, never done or due soon.'),
});
const FLAG_QUERY = listQuery({
  text: search('Part of the trailer’s number or name.'),
  severity: oneOf(['stop', 'limit', 'watch'], 'How bad.'),
  rule: oneOf(FLAG_RULES, 'Which rule.'),
});

@ApiController('Due and flags')
export class ResultsApi {
  constructor(
    private readonly showDue: ShowDue,
    private readonly showFlags: ShowFlags,
  ) {}

  @Get('due')
  @Answers(200, DUE_LIST, 'What is due over all trailers in service, most pressing first')
  async due(@FromCaller() caller: Caller, @ByQuery(DUE_QUERY) query: z.infer<typeof DUE_QUERY>) {
    const filter = { text: query.text || null, state: query.state ?? 'now' };
    const { due, page, perPage } = valueOrRefuse(await this.showDue.run(caller, { filter, page: query.page }));
    const rows = due.rows.map((row) => ({
      ...row,
      due: { ...row.due, yardDays: yardDaysFrom(row.due.yardDays, caller.today) },
    }));
    return { rows, total: due.total, page, perPage };
  }

  @Get('flags')
  @Answers(200, FLAG_LIST, 'Flags of all trailers in service, worst first')
  async flags(@FromCaller() caller: Caller, @ByQuery(FLAG_QUERY) query: z.infer<typeof FLAG_QUERY>) {
    const filter = { text: query.text || null, severity: query.severity ?? null, rule: query.rule ?? null };
    const { flags, page, perPage } = valueOrRefuse(await this.showFlags.run(caller, { filter, page: query.page }));
    return { ...flags, page, perPage };
  }
}
