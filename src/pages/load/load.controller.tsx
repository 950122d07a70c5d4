import { Controller, Get, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { type LoadCheckScreen, ShowLoadCheck } from '../../use-cases/show/show-load-check.js';
import { queryId } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { answerLoad, readAskedLoad } from './asked-load.js';
import { LoadPage } from './load.view.js';

@Controller('load')
export class LoadController {
  constructor(private readonly showLoadCheck: ShowLoadCheck) {}

  /** One address asks and answers: it keeps nothing, and can be bookmarked or sent to the driver. */
  @Get()
  async page(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(query);
    const screen = valueOrRefuse(
      await this.showLoadCheck.run(caller, {
        trailerNumber: form.text('trailer')?.slice(0, 60) ?? null,
        machineId: queryId(query, 'machine'),
        towVehicleId: queryId(query, 'tow'),
      }),
    );
    const asked = readAskedLoad(form, screen.machine);
    const problems = [...trailerProblem(form, screen), ...asked.problems];
    const { facts, machine, towVehicle } = screen;
    const answered =
      facts === null || problems.length > 0 ? null : answerLoad({ facts, machine, towVehicle }, asked, caller.today);
    const page = <LoadPage caller={caller} screen={screen} typed={form.typed(problems)} answered={answered} />;
    sendPage(reply, page, problems.length > 0 ? 422 : 200);
  }
}

function trailerProblem(form: FormReader, { facts }: LoadCheckScreen): readonly FieldProblem[] {
  const typed = form.text('trailer');
  if (typed === null || facts !== null) return [];
  return [{ field: 'trailer', message: `No trailer in service here has the number ${typed}. Enter another.` }];
}
