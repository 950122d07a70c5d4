import { Get, Param, Post, Put } from '@nestjs/common';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { AddTowVehicle } from '../use-cases/machines/add-tow-vehicle.js';
import { ReviseTowVehicle } from '../use-cases/machines/revise-tow-vehicle.js';
import { ShowMachines } from '../use-cases/show/show-machines.js';
import { JsonBody, type JsonObject, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { TOW_VEHICLE_ADDED, TOW_VEHICLE_CHANGED, TOW_VEHICLES } from './schema/answer-schema.js';
import { TOW_VEHICLE_BODY } from './schema/load-schema.js';

@ApiController('Tow vehicles')
export class TowVehiclesApi {
  constructor(
    private readonly showMachines: ShowMachines,
    private readonly addTowVehicle: AddTowVehicle,
    private readonly reviseTowVehicle: ReviseTowVehicle,
  ) {}

  @Get('tow-vehicles')
  @Answers(200, TOW_VEHICLES, 'What pulls the trailers')
  async list(@FromCaller() caller: Caller) {
    return { rows: valueOrRefuse(await this.showMachines.run(caller)).towVehicles };
  }

  @Post('tow-vehicles')
  @Answers(201, TOW_VEHICLE_ADDED, 'Add a tow vehicle')
  async add(@FromCaller() caller: Caller, @JsonBody(TOW_VEHICLE_BODY) body: JsonObject) {
    return valueOrRefuse(await this.addTowVehicle.run(caller, withAddress(body)));
  }

  @Put('tow-vehicles/:towVehicleId')
  @Answers(200, TOW_VEHICLE_CHANGED, 'Write a tow vehicle anew, whole')
  async revise(
    @FromCaller() caller: Caller,
    @Param('towVehicleId', IdPipe) towVehicleId: string,
    @JsonBody(TOW_VEHICLE_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.reviseTowVehicle.run(caller, withAddress(body, { towVehicleId })));
  }
}
