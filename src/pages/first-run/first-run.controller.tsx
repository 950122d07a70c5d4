import { Body, Controller, Get, Post, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Open } from '../../http/open.js';
import { type SignedInPerson, SignIn } from '../../http/sign-in/sign-in.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { FoundYard } from '../../use-cases/people/found-yard.js';
import { MayFoundYard } from '../../use-cases/people/may-found-yard.js';
import { readNewPerson } from '../../use-cases/people/read-new-person.js';
import { type NewYardInput, readNewYard } from '../../use-cases/people/read-new-yard.js';
import { NOTHING_TYPED } from '../components/field.js';
import { FormReader } from '../form/read-form.js';
import { seeOther, sendPage } from '../render.js';
import { tooManyTries } from '../sign-in/too-many.js';
import { FirstRunPage, NoYardPage } from './first-run.view.js';

/** Where a person without a yard ends up, and where a new service gets its first real one. */
@Open()
@Controller('first-run')
export class FirstRunController {
  constructor(
    private readonly signIn: SignIn,
    private readonly mayFoundYard: MayFoundYard,
    private readonly foundYard: FoundYard,
  ) {}

  @Get()
  async show(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const person = (await this.signIn.personOf(request))?.person ?? null;
    if (await this.#may(person)) sendPage(reply, <FirstRunPage typed={NOTHING_TYPED} person={person} />);
    else sendPage(reply, <NoYardPage person={person} />);
  }

  @Post()
  async found(@Req() request: FastifyRequest, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const person = (await this.signIn.personOf(request))?.person ?? null;
    if (!(await this.#may(person))) return sendPage(reply, <NoYardPage person={person} />, 403);
    const form = new FormReader(body);
    const yard = { name: form.need('name'), place: form.text('place'), timeZone: form.need('timeZone') };
    // Everything is looked at before anything is made, so that a slip in one half leaves nothing of the other.
    const problems: FieldProblem[] = [...readNewYard(yard).problems];
    const again = (found: readonly FieldProblem[], status = 422) =>
      sendPage(reply, <FirstRunPage typed={form.typed(found)} person={person} />, status);

    if (person !== null) {
      if (problems.length > 0) return again(problems);
      const yardId = await this.#found(yard, { id: person.personId, name: person.name, email: person.email });
      await this.signIn.workIn(person.sessionToken, yardId);
      return seeOther(reply, '/');
    }

    const read = readNewPerson({
      yourName: form.need('yourName'),
      email: form.need('email'),
      password: form.need('password'),
    });
    problems.push(...read.problems);
    if (problems.length > 0) return again(problems);
    const answer = await this.signIn.signUp(request, read.person);
    if (answer.kind === 'too-many') return again([tooManyTries('email', answer.waitSeconds)], 429);
    if (answer.kind !== 'done') {
      const message = 'Somebody signs in with this address already. Sign in first, then set up the yard.';
      return again([{ field: 'email', message }]);
    }
    for (const cookie of answer.cookies) reply.header('set-cookie', cookie);
    await this.#found(yard, { id: answer.personId, name: read.person.name, email: read.person.email });
    seeOther(reply, '/');
  }

  #may(person: SignedInPerson | null): Promise<boolean> {
    return this.mayFoundYard.run({ personId: person?.personId ?? null });
  }

  async #found(yard: NewYardInput, owner: { id: string; name: string; email: string }): Promise<string> {
    const people = [{ ...owner, role: 'owner' as const, cdl: null }];
    const founded = await this.foundYard.run('page', { ...yard, demo: false, people });
    if (!founded.ok) throw new Error('A yard that had been looked at was refused');
    return founded.value.yardId;
  }
}
