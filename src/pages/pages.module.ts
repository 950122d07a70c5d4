import { Module } from '@nestjs/common';
import { HttpModule } from '../http/http.module.js';
import { UseCasesModule } from '../use-cases/use-cases.module.js';
import { AssetController } from './assets/asset.controller.js';
import { DueController } from './due/due.controller.js';
import { FirstRunController } from './first-run/first-run.controller.js';
import { FitController } from './fit/fit.controller.js';
import { FlagsController } from './flags/flags.controller.js';
import { GateController } from './gate/gate.controller.js';
import { HandoversController } from './handover/handovers.controller.js';
import { JobsController } from './jobs/jobs.controller.js';
import { MoveController } from './jobs/move.controller.js';
import { LoadController } from './load/load.controller.js';
import { MachinesController } from './machines/machines.controller.js';
import { AnswerController } from './notices/answer.controller.js';
import { NoticesController } from './notices/notices.controller.js';
import { PeopleController } from './people/people.controller.js';
import { PersonController } from './people/person.controller.js';
import { SheetsController } from './sheets/sheets.controller.js';
import { InvitationController } from './sign-in/invitation.controller.js';
import { PasswordController } from './sign-in/password.controller.js';
import { SignInController } from './sign-in/sign-in.controller.js';
import { TimelineController } from './timeline/timeline.controller.js';
import { BuildController } from './trailer/build.controller.js';
import { ChecksController } from './trailer/checks.controller.js';
import { HoldsController } from './trailer/holds.controller.js';
import { PartsController } from './trailer/parts.controller.js';
import { ReadingsController } from './trailer/readings.controller.js';
import { TrailerController } from './trailer/trailer.controller.js';
import { TripsController } from './trailer/trips.controller.js';
import { TrailersController } from './trailers/trailers.controller.js';
import { YardController } from './yard/yard.controller.js';

@Module({
  imports: [HttpModule, UseCasesModule],
  controllers: [
    AnswerController,
    BuildController,
    ChecksController,
    DueController,
    FitController,
    FlagsController,
    GateController,
    HandoversController,
    HoldsController,
    JobsController,
    LoadController,
    MachinesController,
    MoveController,
    NoticesController,
    PartsController,
    ReadingsController,
    SheetsController,
    TimelineController,
    TrailersController,
    TrailerController,
    TripsController,
    YardController,
    AssetController,
    FirstRunController,
    InvitationController,
    PasswordController,
    PeopleController,
    PersonController,
    SignInController,
  ],
})
export class PagesModule {}
