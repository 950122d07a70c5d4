import { Body, Controller, Get, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { problemStatus } from '../../http/problem-status.js';
import { valueOrRefuse } from '../../http/refusal.js';
import { SignIn } from '../../http/sign-in/sign-in.js';
import type { Caller, Role } from '../../use-cases/caller.js';
import type { FieldProblem, Problem } from '../../use-cases/outcome.js';
import { CreateApiKey } from '../../use-cases/people/create-api-key.js';
import { InvitePerson } from '../../use-cases/people/invite-person.js';
import { RevokeApiKey } from '../../use-cases/people/revoke-api-key.js';
import { RevokeInvitation } from '../../use-cases/people/revoke-invitation.js';
import { ShowPeople } from '../../use-cases/people/show-people.js';
import { SwitchYard } from '../../use-cases/people/switch-yard.js';
import { NOTHING_TYPED, type Typed } from '../components/field.js';
import { FormReader } from '../form/read-form.js';
import { seeOther, sendPage } from '../render.js';
import { PeoplePage, type Secret } from './people.view.js';
import { saidOf } from './said.js';

interface Shown {
  readonly typed?: Typed;
  readonly said?: string | null;
  readonly secret?: Secret;
  readonly status?: number;
}

@Controller('people')
export class PeopleController {
  constructor(
    private readonly showPeople: ShowPeople,
    private readonly invitePerson: InvitePerson,
    private readonly revokeInvitation: RevokeInvitation,
    private readonly createApiKey: CreateApiKey,
    private readonly revokeApiKey: RevokeApiKey,
    private readonly switchYard: SwitchYard,
    private readonly signIn: SignIn,
  ) {}

  @Get()
  async list(@FromCaller() caller: Caller, @Query('said') said: unknown, @Res() reply: FastifyReply): Promise<void> {
    await this.#show(reply, caller, { said: saidOf(said) });
  }

  @Post('invitations')
  async invite(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const asked = { email: form.need('email'), name: form.text('invitedName'), role: form.need('role') as Role };
    const outcome = await this.invitePerson.run(caller, asked);
    if (outcome.ok) return this.#show(reply, caller, { secret: { kind: 'invitation', ...outcome.value } });
    await this.#again(reply, caller, form, outcome.problem, { name: 'invitedName' }, 'email');
  }

  @Post('invitations/:id/revoke')
  async revoke(@FromCaller() caller: Caller, @Param('id') id: string, @Res() reply: FastifyReply): Promise<void> {
    valueOrRefuse(await this.revokeInvitation.run(caller, { invitationId: id }));
    seeOther(reply, '/people?said=revoked');
  }

  @Post('keys')
  async makeKey(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const name = form.need('keyName');
    const outcome = await this.createApiKey.run(caller, { name });
    if (outcome.ok) return this.#show(reply, caller, { secret: { kind: 'key', name, key: outcome.value.key } });
    await this.#again(reply, caller, form, outcome.problem, { name: 'keyName' }, 'keyName');
  }

  @Post('keys/:id/revoke')
  async revokeKey(@FromCaller() caller: Caller, @Param('id') id: string, @Res() reply: FastifyReply): Promise<void> {
    valueOrRefuse(await this.revokeApiKey.run(caller, { keyId: id }));
    seeOther(reply, '/people?said=key');
  }

  @Post('switch-yard')
  async switch(@Req() request: FastifyRequest, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const found = await this.signIn.personOf(request);
    if (found === null) return seeOther(reply, '/sign-in');
    const { personId, sessionToken } = found.person;
    const asked = { personId, yardId: new FormReader(body).need('yardId') };
    const { yardId } = valueOrRefuse(await this.switchYard.run(asked));
    await this.signIn.workIn(sessionToken, yardId);
    seeOther(reply, '/');
  }

  /** Shows the form again, with the use case's fields under the names they have in it. */
  async #again(
    reply: FastifyReply,
    caller: Caller,
    form: FormReader,
    problem: Problem,
    renamed: Readonly<Record<string, string>>,
    main: string,
  ): Promise<void> {
    const fields: readonly FieldProblem[] =
      problem.kind === 'invalid'
        ? problem.fields.map(({ field, message }) => ({ field: renamed[field] ?? field, message }))
        : problem.kind === 'conflict'
          ? [{ field: main, message: problem.message }]
          : valueOrRefuse({ ok: false, problem });
    await this.#show(reply, caller, { typed: form.typed(fields), status: problemStatus(problem) });
  }

  async #show(reply: FastifyReply, caller: Caller, shown: Shown): Promise<void> {
    const { typed = NOTHING_TYPED, said = null, secret = null, status = 200 } = shown;
    const screen = valueOrRefuse(await this.showPeople.run(caller));
    sendPage(reply, <PeoplePage caller={caller} screen={screen} typed={typed} said={said} secret={secret} />, status);
  }
}
