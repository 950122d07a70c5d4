import { randomUUID } from 'node:crypto';
import { Controller, Get, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import type { Caller } from '../../use-cases/caller.js';
import { CorrectCheck } from '../../use-cases/checks/correct-check.js';
import { RecordCheck } from '../../use-cases/checks/record-check.js';
import { invalid } from '../../use-cases/outcome.js';
import { ShowCheckRecord } from '../../use-cases/show/show-check-record.js';
import { ShowCheckSheet } from '../../use-cases/show/show-check-sheet.js';
import { ShowPhoto } from '../../use-cases/show/show-photo.js';
import { ShowTrailerForm } from '../../use-cases/show/show-trailer-form.js';
import { lineProblem, readCheckForm, readCheckLines, silenceProblem } from '../form/check-form.js';
import { finishForm } from '../form/finish-form.js';
import { queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { readMultipart } from '../form/read-multipart.js';
import { seeOther, sendPage } from '../render.js';
import { personMark } from '../sheets/person-mark.js';
import { answerPhone, forPhoneOf, sendAnswer } from '../sheets/phone-answer.js';
import { saidWords } from '../words/said.js';
import { CheckRecordPage } from './check-record.view.js';
import { CheckSheetPage } from './check-sheet.view.js';
import { PickCheckPage } from './pick-check.view.js';

const OTHER_PERSON = 'This page was opened by somebody else. Open the sheet again and fill it in as yourself.';

@Controller()
export class ChecksController {
  constructor(
    private readonly showForm: ShowTrailerForm,
    private readonly showSheet: ShowCheckSheet,
    private readonly showRecord: ShowCheckRecord,
    private readonly showPhoto: ShowPhoto,
    private readonly recordCheck: RecordCheck,
    private readonly correctCheck: CorrectCheck,
  ) {}

  @Get(['trailers/:trailerId/checks', 'sheets/:trailerId'])
  async pick(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showForm.run(caller, { trailerId }));
    forPhoneOf(reply, caller);
    sendPage(reply, <PickCheckPage caller={caller} screen={screen} />);
  }

  @Get(['trailers/:trailerId/checks/:checkKindId', 'sheets/:trailerId/:checkKindId'])
  async sheet(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('checkKindId', IdPipe) checkKindId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showSheet.run(caller, { trailerId, checkKindId }));
    const typed = { values: { doneOn: caller.today, sendId: randomUUID() }, problems: [] };
    forPhoneOf(reply, caller);
    sendPage(reply, <CheckSheetPage caller={caller} screen={screen} typed={typed} />);
  }

  @Post('trailers/:trailerId/checks/:checkKindId')
  async record(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('checkKindId', IdPipe) checkKindId: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { body, photos, signature } = await readMultipart(request);
    const screen = valueOrRefuse(await this.showSheet.run(caller, { trailerId, checkKindId }));
    const form = new FormReader(body);
    const signer = form.text('person');
    const asJson = request.headers.accept?.includes('application/json') === true;
    // A phone that lies about sends what one person signed; it must not come in as somebody else's.
    if (signer !== null && signer !== personMark(caller)) {
      if (asJson) return sendAnswer(reply, 409, { kind: 'other-person' });
      throw new Refusal({ kind: 'conflict', message: OTHER_PERSON });
    }
    const lines = readCheckLines(form, screen.kind, screen.build);
    const silence = silenceProblem(form, lines);
    const outcome =
      silence === null
        ? await this.recordCheck.run(caller, {
            ...readCheckForm(form, lines),
            trailerId,
            checkKindId,
            photos,
            signature,
          })
        : invalid([silence]);
    if (asJson) return answerPhone(reply, form, lines, trailerId, outcome);
    finishForm(
      reply,
      outcome,
      ({ checkRecordId, holdId }) =>
        holdId === null
          ? `/trailers/${trailerId}/records/${checkRecordId}?said=check-passed`
          : `/trailers/${trailerId}?said=check-held`,
      (problems) => {
        const { values, ...typed } = form.typed(problems.map((problem) => lineProblem(lines, problem)));
        // What was recorded under this id said something else: sent once more, it is a record of its own.
        const sendId = outcome.ok || outcome.problem.kind === 'invalid' ? values.sendId : randomUUID();
        return <CheckSheetPage caller={caller} screen={screen} typed={{ ...typed, values: { ...values, sendId } }} />;
      },
    );
  }

  @Get('trailers/:trailerId/records/:checkRecordId')
  async page(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('checkRecordId', IdPipe) checkRecordId: string,
    @Query() query: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const screen = valueOrRefuse(await this.showRecord.run(caller, { trailerId, checkRecordId }));
    sendPage(reply, <CheckRecordPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Post('trailers/:trailerId/records/:checkRecordId/withdraw')
  async withdraw(
    @FromCaller() caller: Caller,
    @Param('trailerId', IdPipe) trailerId: string,
    @Param('checkRecordId', IdPipe) checkRecordId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    valueOrRefuse(await this.correctCheck.run(caller, { trailerId, checkRecordId, neverDone: true }));
    seeOther(reply, `/trailers/${trailerId}/history?said=check-withdrawn`);
  }

  @Get('photos/:photoId')
  async photo(
    @FromCaller() caller: Caller,
    @Param('photoId', IdPipe) photoId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { mediaType, bytes } = valueOrRefuse(await this.showPhoto.run(caller, { photoId }));
    reply.header('cache-control', 'private, max-age=86400').type(mediaType).send(Buffer.from(bytes));
  }
}
