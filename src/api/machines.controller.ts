import { Get, Param, Post, Put } from '@nestjs/common';
import { FromCaller } from '../http/from-caller.js';
import { IdPipe } from '../http/id-pipe.js';
import { valueOrRefuse } from '../http/refusal.js';
import type { Caller } from '../use-cases/caller.js';
import { AddMachine } from '../use-cases/machines/add-machine.js';
import { ReplaceMachine } from '../use-cases/machines/replace-machine.js';
import { ReviseMachine } from '../use-cases/machines/revise-machine.js';
import { ShowMachines } from '../use-cases/show/show-machines.js';
import { JsonBody, type JsonObject, withAddress } from './body.js';
import { Answers, ApiController } from './describe.js';
import { MACHINE_ADDED, MACHINE_CHANGED, MACHINES } from './schema/answer-schema.js';
import { MACHINE_BODY, REPLACE_MACHINE_BODY } from './schema/load-schema.js';

@ApiController('Machines')
export class MachinesApi {
  constructor(
    private readonly showMachines: ShowMachines,
    private readonly addMachine: AddMachine,
    private readonly reviseMachine: ReviseMachine,
    private readonly replaceMachine: ReplaceMachine,
  ) {}

  @Get('machines')
  @Answers(200, MACHINES, 'Machines the yard hauls, replaced ones too')
  async list(@FromCaller() caller: Caller) {
    return { rows: valueOrRefuse(await this.showMachines.run(caller)).machines };
  }

  @Post('machines')
  @Answers(201, MACHINE_ADDED, 'Add a machine as really hauled')
  async add(@FromCaller() caller: Caller, @JsonBody(MACHINE_BODY) body: JsonObject) {
    return valueOrRefuse(await this.addMachine.run(caller, withAddress(body)));
  }

  @Put('machines/:machineId')
  @Answers(200, MACHINE_CHANGED, 'Write a machine anew, whole; trips keep the weight they were hauled at')
  async revise(
    @FromCaller() caller: Caller,
    @Param('machineId', IdPipe) machineId: string,
    @JsonBody(MACHINE_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.reviseMachine.run(caller, withAddress(body, { machineId })));
  }

  @Post('machines/:machineId/replace')
  @Answers(201, MACHINE_CHANGED, 'Enter the machine that takes over another’s work')
  async replace(
    @FromCaller() caller: Caller,
    @Param('machineId', IdPipe) machineId: string,
    @JsonBody(REPLACE_MACHINE_BODY) body: JsonObject,
  ) {
    return valueOrRefuse(await this.replaceMachine.run(caller, withAddress(body, { machineId })));
  }
}
