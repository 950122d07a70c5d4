import { Body, Controller, Get, Header, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Clock } from '../../http/clock.js';
import { Open } from '../../http/open.js';
import { type SignedInPerson, SignIn } from '../../http/sign-in/sign-in.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { AcceptInvitation } from '../../use-cases/people/accept-invitation.js';
import { type OpenInvitation, ReadInvitation } from '../../use-cases/people/read-invitation.js';
import { readNewPerson } from '../../use-cases/people/read-new-person.js';
import { NOTHING_TYPED, type Typed } from '../components/field.js';
import { FormReader } from '../form/read-form.js';
import { seeOther, sendPage } from '../render.js';
import { InvitationGonePage, InvitationPage, type InvitedAs } from './invitation.view.js';
import { tooManyTries } from './too-many.js';

@Open()
@Controller('invitation')
export class InvitationController {
  constructor(
    private readonly signIn: SignIn,
    private readonly readInvitation: ReadInvitation,
    private readonly acceptInvitation: AcceptInvitation,
    private readonly clock: Clock,
  ) {}

  @Get()
  @Header('referrer-policy', 'same-origin')
  async show(
    @Req() request: FastifyRequest,
    @Query('token') token: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await this.#show(request, reply, typeof token === 'string' ? token : '', NOTHING_TYPED, 200);
  }

  @Post()
  async join(@Req() request: FastifyRequest, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const token = form.need('token');
    const found = await this.readInvitation.run({ token, now: this.clock.now() });
    if (!found.ok) return sendPage(reply, <InvitationGonePage />, 404);
    const { as, person } = await this.#invitedAs(request, found.value);
    const again = (problem: FieldProblem, status = 422) =>
      this.#show(request, reply, token, form.typed([problem]), status);

    if (as.kind === 'self' && person !== null) {
      const joined = await this.#accept(token, { id: person.personId, name: person.name, email: person.email });
      if (!joined.ok) return sendPage(reply, <InvitationGonePage />, 404);
      await this.signIn.workIn(person.sessionToken, joined.value.yardId);
      return seeOther(reply, '/');
    }
    if (as.kind !== 'new') return this.#show(request, reply, token, NOTHING_TYPED, 409);

    const { email } = found.value;
    const read = readNewPerson({ yourName: form.need('yourName'), email, password: form.need('password') });
    if (read.problems.length > 0) return this.#show(request, reply, token, form.typed(read.problems), 422);
    const answer = await this.signIn.signUp(request, read.person);
    if (answer.kind === 'too-many') return again(tooManyTries('password', answer.waitSeconds), 429);
    // Somebody made an account with this address a moment ago: the page now asks to sign in.
    if (answer.kind !== 'done') return this.#show(request, reply, token, NOTHING_TYPED, 409);
    const joined = await this.#accept(token, { id: answer.personId, name: read.person.name, email });
    for (const cookie of answer.cookies) reply.header('set-cookie', cookie);
    if (!joined.ok) return sendPage(reply, <InvitationGonePage />, 404);
    seeOther(reply, '/');
  }

  #accept(token: string, person: { id: string; name: string; email: string }) {
    return this.acceptInvitation.run({ token, person, now: this.clock.now() });
  }

  async #show(
    request: FastifyRequest,
    reply: FastifyReply,
    token: string,
    typed: Typed,
    status: number,
  ): Promise<void> {
    const found = await this.readInvitation.run({ token, now: this.clock.now() });
    if (!found.ok) return sendPage(reply, <InvitationGonePage />, 404);
    const { as } = await this.#invitedAs(request, found.value);
    sendPage(reply, <InvitationPage invitation={found.value} token={token} as={as} typed={typed} />, status);
  }

  async #invitedAs(
    request: FastifyRequest,
    { email }: OpenInvitation,
  ): Promise<{ as: InvitedAs; person: SignedInPerson | null }> {
    const person = (await this.signIn.personOf(request))?.person ?? null;
    if (person !== null) {
      const isSelf = person.email.toLowerCase() === email;
      return { person, as: isSelf ? { kind: 'self', name: person.name } : { kind: 'other', email: person.email } };
    }
    const known = (await this.signIn.findPerson(email)) !== null;
    return { person, as: known ? { kind: 'known' } : { kind: 'new' } };
  }
}
