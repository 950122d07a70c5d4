import { Controller, Get, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import type { Caller } from '../../use-cases/caller.js';
import { sendPage } from '../render.js';
import { forPhoneOf } from './phone-answer.js';
import { SheetsPage } from './sheets.view.js';

@Controller('sheets')
export class SheetsController {
  @Get()
  sheets(@FromCaller() caller: Caller, @Res() reply: FastifyReply): void {
    forPhoneOf(reply, caller);
    sendPage(reply, <SheetsPage caller={caller} />);
  }
}
