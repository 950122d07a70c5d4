import { Module } from '@nestjs/common';
import { HttpModule } from '../http/http.module.js';
import { UseCasesModule } from '../use-cases/use-cases.module.js';
import { BuildsApi } from './builds.controller.js';
import { CalcApi } from './calc.controller.js';
import { CheckKindsApi } from './check-kinds.controller.js';
import { ChecksApi } from './checks.controller.js';
import { HandoversApi } from './handovers.controller.js';
import { HoldsApi } from './holds.controller.js';
import { JobsApi } from './jobs.controller.js';
import { MachinesApi } from './machines.controller.js';
import { MeApi } from './me.controller.js';
import { NoticesApi } from './notices.controller.js';
import { ApiDocument } from './openapi/api-document.js';
import { OpenApi } from './openapi/openapi.controller.js';
import { PartsApi } from './parts.controller.js';
import { ReadingsApi } from './readings.controller.js';
import { ResultsApi } from './results.controller.js';
import { TowVehiclesApi } from './tow-vehicles.controller.js';
import { TrailersApi } from './trailers.controller.js';
import { TripsApi } from './trips.controller.js';
import { YardApi } from './yard.controller.js';

/** Every fact and result over JSON. */
@Module({
  imports: [HttpModule, UseCasesModule],
  controllers: [
    BuildsApi,
    CalcApi,
    CheckKindsApi,
    ChecksApi,
    HandoversApi,
    HoldsApi,
    JobsApi,
    MachinesApi,
    MeApi,
    NoticesApi,
    PartsApi,
    ReadingsApi,
    ResultsApi,
    TowVehiclesApi,
    TrailersApi,
    TripsApi,
    YardApi,
    OpenApi,
  ],
  providers: [ApiDocument],
})
export class ApiModule {}
