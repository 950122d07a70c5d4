import { Body, Controller, Get, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { problemStatus } from '../../http/problem-status.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import { type Caller, may, type Role } from '../../use-cases/caller.js';
import { RecordBounce } from '../../use-cases/notices/record-bounce.js';
import type { Outcome } from '../../use-cases/outcome.js';
import { ChangeLicence } from '../../use-cases/people/change-licence.js';
import { ChangeRole } from '../../use-cases/people/change-role.js';
import { MendAddress } from '../../use-cases/people/mend-address.js';
import { PersonLeft } from '../../use-cases/people/person-left.js';
import { ShowPeople } from '../../use-cases/people/show-people.js';
import type { Typed } from '../components/field.js';
import { FormReader } from '../form/read-form.js';
import { seeOther, sendPage } from '../render.js';
import { PersonPage } from './person.view.js';

@Controller('people/:personId')
export class PersonController {
  constructor(
    private readonly showPeople: ShowPeople,
    private readonly mendAddress: MendAddress,
    private readonly changeRole: ChangeRole,
    private readonly changeLicence: ChangeLicence,
    private readonly personLeft: PersonLeft,
    private readonly recordBounce: RecordBounce,
  ) {}

  @Get()
  async show(
    @FromCaller() caller: Caller,
    @Param('personId') personId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await this.#show(reply, caller, personId, { values: {}, problems: [] }, 200);
  }

  @Post('address')
  async address(
    @FromCaller() caller: Caller,
    @Param('personId') personId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = new FormReader(body);
    const outcome = await this.mendAddress.run(caller, { personId, email: form.need('email') });
    await this.#answer(reply, caller, personId, form, outcome, 'email', 'address');
  }

  @Post('role')
  async role(
    @FromCaller() caller: Caller,
    @Param('personId') personId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = new FormReader(body);
    const outcome = await this.changeRole.run(caller, { personId, role: form.need('role') as Role });
    await this.#answer(reply, caller, personId, form, outcome, 'role', 'role');
  }

  @Post('licence')
  async licence(
    @FromCaller() caller: Caller,
    @Param('personId') personId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = new FormReader(body);
    const cdl = form.text('cdl') as 'A' | 'B' | 'none' | null;
    const outcome = await this.changeLicence.run(caller, { personId, cdl });
    await this.#answer(reply, caller, personId, form, outcome, 'cdl', 'licence');
  }

  @Post('bounced')
  async bounced(
    @FromCaller() caller: Caller,
    @Param('personId') personId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = new FormReader(body);
    const outcome = await this.recordBounce.run(caller, { personId, note: form.need('note') });
    await this.#answer(reply, caller, personId, form, outcome, 'note', 'bounced');
  }

  @Post('left')
  async left(
    @FromCaller() caller: Caller,
    @Param('personId') personId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const outcome = await this.personLeft.run(caller, { personId });
    await this.#answer(reply, caller, personId, new FormReader(body), outcome, 'role', 'left');
  }

  async #answer(
    reply: FastifyReply,
    caller: Caller,
    personId: string,
    form: FormReader,
    outcome: Outcome<unknown>,
    field: string,
    said: string,
  ): Promise<void> {
    if (outcome.ok) return seeOther(reply, `/people?said=${said}`);
    const { problem } = outcome;
    if (problem.kind === 'not-found' || problem.kind === 'not-allowed') throw new Refusal(problem);
    const fields = problem.kind === 'invalid' ? problem.fields : [{ field, message: problem.message }];
    await this.#show(reply, caller, personId, form.typed(fields), problemStatus(problem));
  }

  /** What was typed stands over what is kept, so that a refused form shows the slip and the other forms the facts. */
  async #show(reply: FastifyReply, caller: Caller, personId: string, typed: Typed, status: number): Promise<void> {
    const screen = valueOrRefuse(await this.showPeople.run(caller));
    const member = screen.members.find((one) => one.personId === personId && one.leftOn === null);
    if (member === undefined) throw new Refusal({ kind: 'not-found', what: 'person' });
    if (!may(caller, 'owner') && caller.personId !== personId)
      throw new Refusal({ kind: 'not-allowed', needs: 'owner' });
    const kept = { email: member.email, role: member.role, cdl: member.cdl ?? '' };
    const shown = { ...typed, values: { ...kept, ...typed.values } };
    sendPage(reply, <PersonPage caller={caller} member={member} typed={shown} />, status);
  }
}
