import { Body, Controller, Get, Header, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Open } from '../../http/open.js';
import { SignIn } from '../../http/sign-in/sign-in.js';
import { RESET_HOURS } from '../../http/sign-in/sign-in-library.js';
import { passwordProblem } from '../../use-cases/people/read-password.js';
import { NOTHING_TYPED } from '../components/field.js';
import { FormReader } from '../form/read-form.js';
import { seeOther, sendPage } from '../render.js';
import { ForgotPage, LinkSentPage, LinkTooOldPage, ResetPage } from './password.view.js';
import { tooManyTries } from './too-many.js';

@Open()
@Controller()
export class PasswordController {
  constructor(private readonly signIn: SignIn) {}

  @Get('forgot-password')
  showForgot(@Res() reply: FastifyReply): void {
    sendPage(reply, <ForgotPage typed={NOTHING_TYPED} />);
  }

  /** Answers the same whether somebody has the address or not. */
  @Post('forgot-password')
  async forgot(@Req() request: FastifyRequest, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const email = form.need('email');
    if (!email.includes('@')) {
      const message = 'Enter the mail address you sign in with, such as pat@example.com.';
      return sendPage(reply, <ForgotPage typed={form.typed([{ field: 'email', message }])} />, 422);
    }
    const answer = await this.signIn.forgot(request, email);
    if (answer.kind === 'too-many') {
      return sendPage(reply, <ForgotPage typed={form.typed([tooManyTries('email', answer.waitSeconds)])} />, 429);
    }
    sendPage(reply, <LinkSentPage validHours={RESET_HOURS} />);
  }

  /** The link of the mail. Looking at it changes nothing, because mail scanners look at every link. */
  @Get('reset-password')
  @Header('referrer-policy', 'no-referrer')
  showReset(@Query('token') token: unknown, @Res() reply: FastifyReply): void {
    if (typeof token !== 'string' || token === '') sendPage(reply, <LinkTooOldPage />, 404);
    else sendPage(reply, <ResetPage typed={NOTHING_TYPED} token={token} />);
  }

  @Post('reset-password')
  async reset(@Req() request: FastifyRequest, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    const [token, password] = [form.need('token'), form.need('password')];
    const weak = passwordProblem('password', password);
    if (weak !== null) return sendPage(reply, <ResetPage typed={form.typed([weak])} token={token} />, 422);
    const answer = await this.signIn.reset(request, token, password);
    if (answer.kind === 'link-too-old') return sendPage(reply, <LinkTooOldPage />, 422);
    if (answer.kind === 'too-many') {
      const typed = form.typed([tooManyTries('password', answer.waitSeconds)]);
      return sendPage(reply, <ResetPage typed={typed} token={token} />, 429);
    }
    seeOther(reply, '/sign-in?said=new-password');
  }
}
