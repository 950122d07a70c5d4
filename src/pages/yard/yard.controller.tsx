import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { ShowYard, type YardScreen } from '../../use-cases/show/show-yard.js';
import { RetireCheckKind } from '../../use-cases/yard/retire-check-kind.js';
import { SetCheckKind } from '../../use-cases/yard/set-check-kind.js';
import { SetYardSettings, type YardSettingsInput } from '../../use-cases/yard/set-yard-settings.js';
import { checkKindProblem, fillCheckKindForm, readCheckKindForm, readTriggers } from '../form/check-kind-form.js';
import { asText, plain } from '../form/fill-form.js';
import { finishForm } from '../form/finish-form.js';
import { queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { seeOther, sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { CheckKindPage } from './check-kind.view.js';
import { YardPage } from './yard.view.js';

@Controller('yard')
export class YardController {
  constructor(
    private readonly showYard: ShowYard,
    private readonly setSettings: SetYardSettings,
    private readonly setCheckKind: SetCheckKind,
    private readonly retireCheckKind: RetireCheckKind,
  ) {}

  @Get()
  async page(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const screen = valueOrRefuse(await this.showYard.run(caller));
    const typed = { values: fillSettings(screen), problems: [] };
    sendPage(
      reply,
      <YardPage caller={caller} screen={screen} typed={typed} said={saidWords(queryText(query, 'said'))} />,
    );
  }

  @Post()
  async save(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const screen = valueOrRefuse(await this.showYard.run(caller));
    const form = new FormReader(body);
    finishForm(
      reply,
      await this.setSettings.run(caller, readSettings(form)),
      () => '/yard?said=yard-saved',
      (problems) => {
        const typed = form.typed(problems.map(percentProblem));
        return <YardPage caller={caller} screen={screen} typed={typed} said={null} />;
      },
    );
  }

  @Get('checks/new')
  async newForm(@FromCaller() caller: Caller, @Res() reply: FastifyReply): Promise<void> {
    const screen = valueOrRefuse(await this.showYard.run(caller));
    const typed = { values: { safety: 'yes', blocks: 'none' }, problems: [] };
    sendPage(reply, <CheckKindPage caller={caller} screen={screen} typed={typed} checkKindId={null} />);
  }

  @Post('checks/new')
  async add(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    await this.saveCheckKind(caller, body, null, reply);
  }

  @Get('checks/:checkKindId')
  async form(
    @FromCaller() caller: Caller,
    @Param('checkKindId', IdPipe) checkKindId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showYard.run(caller));
    const kind = screen.checkKinds.find((one) => one.id === checkKindId);
    if (kind === undefined) throw new Refusal({ kind: 'not-found', what: 'check' });
    const typed = { values: fillCheckKindForm(kind), problems: [] };
    sendPage(reply, <CheckKindPage caller={caller} screen={screen} typed={typed} checkKindId={checkKindId} />);
  }

  @Post('checks/:checkKindId')
  async change(
    @FromCaller() caller: Caller,
    @Param('checkKindId', IdPipe) checkKindId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await this.saveCheckKind(caller, body, checkKindId, reply);
  }

  @Post('checks/:checkKindId/retire')
  async retire(
    @FromCaller() caller: Caller,
    @Param('checkKindId', IdPipe) checkKindId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    valueOrRefuse(await this.retireCheckKind.run(caller, { checkKindId }));
    seeOther(reply, '/yard?said=check-kind-retired');
  }

  private async saveCheckKind(
    caller: Caller,
    body: unknown,
    checkKindId: string | null,
    reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showYard.run(caller));
    const form = new FormReader(body);
    const triggers = readTriggers(form);
    const outcome = await this.setCheckKind.run(caller, { ...readCheckKindForm(form, triggers), checkKindId });
    finishForm(
      reply,
      outcome,
      () => '/yard?said=check-kind-saved',
      (problems) => {
        const typed = form.typed(problems.map((problem) => checkKindProblem(triggers, problem)));
        return <CheckKindPage caller={caller} screen={screen} typed={typed} checkKindId={checkKindId} />;
      },
    );
  }
}

function readSettings(form: FormReader): YardSettingsInput {
  const percent = form.number('policy.weighFirstPercent');
  const needed = (name: string) => form.number(name) ?? Number.NaN;
  return {
    name: form.need('name'),
    place: form.text('place'),
    timeZone: form.need('timeZone'),
    planHour: needed('planHour'),
    quietFromHour: needed('quietFromHour'),
    quietToHour: needed('quietToHour'),
    policy: {
      tireAgeLimitYears: needed('policy.tireAgeLimitYears'),
      weighFirstShare: (percent ?? Number.NaN) / 100,
      useWindowDays: needed('policy.useWindowDays'),
      driftTrips: needed('policy.driftTrips'),
      decayIndex: form.number('policy.decayIndex'),
      deckLifeYears: form.number('policy.deckLifeYears'),
    },
  };
}

function fillSettings({ yard }: YardScreen): Record<string, string> {
  return {
    name: yard.name,
    place: asText(yard.place),
    timeZone: yard.timeZone,
    planHour: String(yard.planHour),
    quietFromHour: String(yard.quietFromHour),
    quietToHour: String(yard.quietToHour),
    'policy.tireAgeLimitYears': plain(yard.policy.tireAgeLimitYears),
    'policy.weighFirstPercent': plain(yard.policy.weighFirstShare * 100),
    'policy.useWindowDays': String(yard.policy.useWindowDays),
    'policy.driftTrips': String(yard.policy.driftTrips),
    'policy.decayIndex': yard.policy.decayIndex === null ? '' : plain(yard.policy.decayIndex),
    'policy.deckLifeYears': yard.policy.deckLifeYears === null ? '' : plain(yard.policy.deckLifeYears),
  };
}

/** The page asks for a percentage; facts know shares. */
function percentProblem<Problem extends { readonly field: string; readonly message: string }>(problem: Problem) {
  return problem.field === 'policy.weighFirstShare'
    ? { field: 'policy.weighFirstPercent', message: problem.message }
    : problem;
}
