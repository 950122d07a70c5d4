import { Body, Controller, Get, Param, Post, Query, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { FromCaller } from '../../http/from-caller.js';
import { IdPipe } from '../../http/id-pipe.js';
import { Refusal, valueOrRefuse } from '../../http/refusal.js';
import type { Machine } from '../../rules/facts/load.js';
import type { TowVehicle } from '../../rules/facts/use.js';
import type { Caller } from '../../use-cases/caller.js';
import type { MachineInput } from '../../use-cases/input/load-input.js';
import type { TowVehicleInput } from '../../use-cases/input/tow-vehicle-input.js';
import { AddMachine } from '../../use-cases/machines/add-machine.js';
import { AddTowVehicle } from '../../use-cases/machines/add-tow-vehicle.js';
import { ReplaceMachine } from '../../use-cases/machines/replace-machine.js';
import { ReviseMachine } from '../../use-cases/machines/revise-machine.js';
import { ReviseTowVehicle } from '../../use-cases/machines/revise-tow-vehicle.js';
import { ShowMachines } from '../../use-cases/show/show-machines.js';
import { Field, NOTHING_TYPED, Section, type Typed } from '../components/field.js';
import { asText, inInches, inPounds, inPoundsOfForce } from '../form/fill-form.js';
import { finishForm } from '../form/finish-form.js';
import { queryText } from '../form/query.js';
import { FormReader } from '../form/read-form.js';
import { sendPage } from '../render.js';
import { saidWords } from '../words/said.js';
import { MachineFormPage, TowVehicleFormPage } from './machine-form.view.js';
import { MachinesPage } from './machines.view.js';

@Controller()
export class MachinesController {
  constructor(
    private readonly showMachines: ShowMachines,
    private readonly addMachine: AddMachine,
    private readonly reviseMachine: ReviseMachine,
    private readonly replaceMachine: ReplaceMachine,
    private readonly addTowVehicle: AddTowVehicle,
    private readonly reviseTowVehicle: ReviseTowVehicle,
  ) {}

  @Get('machines')
  async list(@FromCaller() caller: Caller, @Query() query: unknown, @Res() reply: FastifyReply): Promise<void> {
    const screen = valueOrRefuse(await this.showMachines.run(caller));
    sendPage(reply, <MachinesPage caller={caller} screen={screen} said={saidWords(queryText(query, 'said'))} />);
  }

  @Get('machines/new')
  newForm(@FromCaller() caller: Caller, @Res() reply: FastifyReply): void {
    sendPage(reply, newMachinePage(caller, NOTHING_TYPED));
  }

  @Post('machines/new')
  async add(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    finishForm(
      reply,
      await this.addMachine.run(caller, readMachine(form)),
      () => '/machines?said=machine-added',
      (problems) => newMachinePage(caller, form.typed(problems)),
    );
  }

  @Get('machines/:machineId')
  async changeForm(
    @FromCaller() caller: Caller,
    @Param('machineId', IdPipe) machineId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const machine = await this.machine(caller, machineId);
    sendPage(reply, changeMachinePage(caller, machineId, { values: fillMachine(machine), problems: [] }));
  }

  @Post('machines/:machineId')
  async change(
    @FromCaller() caller: Caller,
    @Param('machineId', IdPipe) machineId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = new FormReader(body);
    finishForm(
      reply,
      await this.reviseMachine.run(caller, { ...readMachine(form), machineId }),
      () => '/machines?said=machine-changed',
      (problems) => changeMachinePage(caller, machineId, form.typed(problems)),
    );
  }

  @Get('machines/:machineId/replace')
  async replaceForm(
    @FromCaller() caller: Caller,
    @Param('machineId', IdPipe) machineId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const machine = await this.machine(caller, machineId);
    const typed = { values: { replacedOn: caller.today }, problems: [] };
    sendPage(reply, replaceMachinePage(caller, machine, typed));
  }

  @Post('machines/:machineId/replace')
  async replace(
    @FromCaller() caller: Caller,
    @Param('machineId', IdPipe) machineId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const machine = await this.machine(caller, machineId);
    const form = new FormReader(body);
    const input = { machineId, replacedOn: form.need('replacedOn'), by: readMachine(form) };
    finishForm(
      reply,
      await this.replaceMachine.run(caller, input),
      () => '/machines?said=machine-replaced',
      (problems) =>
        replaceMachinePage(
          caller,
          machine,
          form.typed(problems.map(({ field, message }) => ({ field: field.replace(/^by\./, ''), message }))),
        ),
    );
  }

  @Get('tow-vehicles/new')
  newTowForm(@FromCaller() caller: Caller, @Res() reply: FastifyReply): void {
    sendPage(reply, towVehiclePage(caller, null, NOTHING_TYPED));
  }

  @Post('tow-vehicles/new')
  async addTow(@FromCaller() caller: Caller, @Body() body: unknown, @Res() reply: FastifyReply): Promise<void> {
    const form = new FormReader(body);
    finishForm(
      reply,
      await this.addTowVehicle.run(caller, readTowVehicle(form)),
      () => '/machines?said=tow-vehicle-added',
      (problems) => towVehiclePage(caller, null, form.typed(problems)),
    );
  }

  @Get('tow-vehicles/:towVehicleId')
  async changeTowForm(
    @FromCaller() caller: Caller,
    @Param('towVehicleId', IdPipe) towVehicleId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const { towVehicles } = valueOrRefuse(await this.showMachines.run(caller));
    const vehicle = towVehicles.find((one) => one.id === towVehicleId);
    if (vehicle === undefined) throw new Refusal({ kind: 'not-found', what: 'tow vehicle' });
    sendPage(reply, towVehiclePage(caller, towVehicleId, { values: fillTowVehicle(vehicle), problems: [] }));
  }

  @Post('tow-vehicles/:towVehicleId')
  async changeTow(
    @FromCaller() caller: Caller,
    @Param('towVehicleId', IdPipe) towVehicleId: string,
    @Body() body: unknown,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const form = new FormReader(body);
    finishForm(
      reply,
      await this.reviseTowVehicle.run(caller, { ...readTowVehicle(form), towVehicleId }),
      () => '/machines?said=tow-vehicle-changed',
      (problems) => towVehiclePage(caller, towVehicleId, form.typed(problems)),
    );
  }

  private async machine(caller: Caller, machineId: string): Promise<Machine> {
    const { machines } = valueOrRefuse(await this.showMachines.run(caller));
    const machine = machines.find((one) => one.id === machineId);
    if (machine === undefined) throw new Refusal({ kind: 'not-found', what: 'machine' });
    return machine;
  }
}

function readMachine(form: FormReader): MachineInput {
  return {
    name: form.need('name'),
    massKg: form.pounds('mass'),
    basis: form.text('basis') as MachineInput['basis'],
    lengthM: form.inches('length'),
    widthM: form.inches('width'),
    balancePointM: form.inches('balancePoint'),
    contact: form.text('contact') as MachineInput['contact'],
    contactCount: form.number('contactCount'),
    contactLengthM: form.inches('contactLength'),
    contactWidthM: form.inches('contactWidth'),
    wheelbaseM: form.inches('wheelbase'),
    clearanceM: form.inches('clearance'),
  };
}

function fillMachine(machine: Machine): Record<string, string> {
  return {
    name: machine.name,
    mass: inPounds(machine.massKg),
    basis: machine.massKg === null ? '' : machine.basis,
    length: inInches(machine.lengthM),
    width: inInches(machine.widthM),
    balancePoint: inInches(machine.balancePointM),
    contact: asText(machine.contact),
    contactCount: asText(machine.contactCount),
    contactLength: inInches(machine.contactLengthM),
    contactWidth: inInches(machine.contactWidthM),
    wheelbase: inInches(machine.wheelbaseM),
    clearance: inInches(machine.clearanceM),
  };
}

function readTowVehicle(form: FormReader): TowVehicleInput {
  return {
    name: form.need('name'),
    gvwrKg: form.pounds('gvwr'),
    massKg: form.pounds('mass'),
    gcwrKg: form.pounds('gcwr'),
    hitchRatingKg: form.pounds('hitchRating'),
    hitchTongueN: form.poundsOfForce('hitchTongue'),
    ballSizeM: form.inches('ballSize'),
    ballHeightM: form.inches('ballHeight'),
  };
}

function fillTowVehicle(vehicle: TowVehicle): Record<string, string> {
  return {
    name: vehicle.name,
    gvwr: inPounds(vehicle.gvwrKg),
    mass: inPounds(vehicle.massKg),
    gcwr: inPounds(vehicle.gcwrKg),
    hitchRating: inPounds(vehicle.hitchRatingKg),
    hitchTongue: inPoundsOfForce(vehicle.hitchTongueN),
    ballSize: inInches(vehicle.ballSizeM),
    ballHeight: inInches(vehicle.ballHeightM),
  };
}

function newMachinePage(caller: Caller, typed: Typed) {
  return (
    <MachineFormPage
      caller={caller}
      typed={typed}
      title="Add a machine"
      lede="As really hauled. An unknown weight may stay unknown; then no load with it can be answered for."
      action="/machines/new"
      submit="Add the machine"
    />
  );
}

function changeMachinePage(caller: Caller, machineId: string, typed: Typed) {
  return (
    <MachineFormPage
      caller={caller}
      typed={typed}
      title="Change a machine"
      lede="Weighed at last, or with another bucket. Trips keep the weight they were hauled at."
      action={`/machines/${machineId}`}
      submit="Save the machine"
      after={
        <p>
          Is it another machine that took over its work?{' '}
          <a href={`/machines/${machineId}/replace`}>Enter the one that replaced it</a>, so that its trailers are judged
          by the new one.
        </p>
      }
    />
  );
}

function replaceMachinePage(caller: Caller, machine: Machine, typed: Typed) {
  return (
    <MachineFormPage
      caller={caller}
      typed={typed}
      title={`What took over from ${machine.name}`}
      lede="The most common way to outgrow a trailer: the machine is replaced by a heavier one, and nobody redoes the sum."
      action={`/machines/${machine.id}/replace`}
      submit="Enter the new machine"
      before={
        <Section title="When">
          <div class="fields">
            <Field typed={typed} name="replacedOn" label="Replaced on" type="date" required />
          </div>
        </Section>
      }
    />
  );
}

function towVehiclePage(caller: Caller, towVehicleId: string | null, typed: Typed) {
  return (
    <TowVehicleFormPage
      caller={caller}
      typed={typed}
      title={towVehicleId === null ? 'Add a tow vehicle' : 'Change a tow vehicle'}
      lede="Ratings decide which rules and which license a combination asks for."
      action={towVehicleId === null ? '/tow-vehicles/new' : `/tow-vehicles/${towVehicleId}`}
      submit={towVehicleId === null ? 'Add the tow vehicle' : 'Save the tow vehicle'}
    />
  );
}
