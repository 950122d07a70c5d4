import { Body, Controller, Get, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { ownPath } from '../../http/elsewhere.js';
import { Open } from '../../http/open.js';
import { SignIn } from '../../http/sign-in/sign-in.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { MayFoundYard } from '../../use-cases/people/may-found-yard.js';
import { NOTHING_TYPED, type Typed } from '../components/field.js';
import { FormReader } from '../form/read-form.js';
import { seeOther, sendPage } from '../render.js';
import { SignInPage } from './sign-in.view.js';
import { tooManyTries } from './too-many.js';

const SAID: Readonly<Record<string, string>> = {
  out: 'You are signed out.',
  'new-password': 'The new password holds. Sign in with it.',
};

@Open()
@Controller()
export class SignInController {
  constructor(
    private readonly signIn: SignIn,
    private readonly mayFoundYard: MayFoundYard,
  ) {}

  @Get('sign-in')
  async show(
    @Req() request: FastifyRequest,
    @Query('next') next: unknown,
    @Query('said') said: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    if ((await this.signIn.personOf(request)) !== null) return seeOther(reply, ownPath(next));
    await this.#show(reply, NOTHING_TYPED, ownPath(next), 200, typeof said === 'string' ? SAID[said] : undefined);
  }

  @Post('sign-in')
  async enter(@Req() request: FastifyRequest, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const next = ownPath(form.text('next'));
    const [email, password] = [form.need('email'), form.need('password')];
    const missing: FieldProblem[] = [];
    if (email === '') missing.push({ field: 'email', message: 'Enter the mail address you sign in with.' });
    if (password === '') missing.push({ field: 'password', message: 'Enter your password.' });
    if (missing.length > 0) return this.#show(reply, form.typed(missing), next, 422);

    const answer = await this.signIn.signIn(request, email, password);
    if (answer.kind === 'too-many') {
      return this.#show(reply, form.typed([tooManyTries('password', answer.waitSeconds)]), next, 429);
    }
    if (answer.kind !== 'done') {
      const message = 'This address and password do not go together. Mend either, or set a new password by mail.';
      return this.#show(reply, form.typed([{ field: 'password', message }]), next, 422);
    }
    for (const cookie of answer.cookies) reply.header('set-cookie', cookie);
    seeOther(reply, next);
  }

  @Post('sign-out')
  async leave(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    for (const cookie of await this.signIn.signOut(request)) reply.header('set-cookie', cookie);
    seeOther(reply, '/sign-in?said=out');
  }

  async #show(reply: FastifyReply, typed: Typed, next: string, status: number, said?: string): Promise<void> {
    const mayFound = await this.mayFoundYard.run({ personId: null });
    sendPage(reply, <SignInPage typed={typed} next={next} said={said ?? null} mayFound={mayFound} />, status);
  }
}
