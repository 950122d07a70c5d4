import type { Load } from '../../rules/facts/load.js';
import type { Newtons } from '../../rules/units/force.js';
import { newtons } from '../../rules/units/force.js';
import type { LoadInput } from '../../use-cases/input/load-input.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { asText, inInches, inPounds, inPoundsOfForce } from './fill-form.js';
import type { FormReader } from './read-form.js';

const CARGO = 'load.cargo';
const TICKET_AXLES = 3;

export interface ReadLoad {
  readonly machineId: string | null;
  readonly load: LoadInput;
  /** Where the machine's own line stands in the cargo, if its weight was typed; after all the others. */
  readonly machineAt: number | null;
}

/**
 * Reads machine, cargo, place and ticket. The machine comes along by itself with the weight on file; a weight typed
 * for this haul takes its place.
 */
export function readLoadForm(form: FormReader, machines: TrailerFormScreen['machines']): ReadLoad {
  const machineId = form.text('machineId');
  const rows = form.rows(CARGO, ['name', 'mass']);
  const cargo: NonNullable<LoadInput['cargo']>[number][] = Array.from({ length: rows }, (_, row) => ({
    name: form.need(`${CARGO}.${row}.name`),
    massKg: form.pounds(`${CARGO}.${row}.mass`) ?? (Number.NaN as Load['cargo'][number]['massKg']),
    basis: (form.text(`${CARGO}.${row}.basis`) ?? 'stated') as Load['cargo'][number]['basis'],
    machineId: null,
    remedy: form.text(`${CARGO}.${row}.remedy`) as Load['cargo'][number]['remedy'],
  }));
  const machineKg = form.pounds('machineMass');
  const machine = machines.find((one) => one.id === machineId);
  const machineAt = machineKg !== null && machineId !== null ? cargo.length : null;
  if (machineAt !== null && machineKg !== null) {
    cargo.push({
      name: machine?.name ?? 'Machine',
      massKg: machineKg,
      basis: (form.text('machineBasis') ?? 'stated') as Load['cargo'][number]['basis'],
      machineId,
      remedy: null,
    });
  }
  return {
    machineId,
    machineAt,
    load: { cargo, balancePointM: form.inches('load.balancePoint'), scale: readTicket(form) },
  };
}

function readTicket(form: FormReader): LoadInput['scale'] {
  const grossKg = form.pounds('load.scale.gross');
  const tongueN = form.poundsOfForce('load.scale.tongue');
  const axles = Array.from({ length: TICKET_AXLES }, (_, at) => form.poundsOfForce(`load.scale.axle.${at}`));
  const last = axles.findLastIndex((axle) => axle !== null);
  if (grossKg === null && tongueN === null && last < 0) return null;
  const axleN = last < 0 ? null : axles.slice(0, last + 1).map((axle): Newtons => axle ?? newtons(Number.NaN));
  return { grossKg, tongueN, axleN };
}

/** Problems of the machine's own line belong to the fields where its weight was typed. */
export function loadProblem(read: ReadLoad, problem: FieldProblem): FieldProblem {
  const own = read.machineAt === null ? null : `load.cargo[${read.machineAt}].`;
  if (own === null || !problem.field.startsWith(own)) return problem;
  const name = problem.field.slice(own.length);
  return { field: name === 'basis' ? 'machineBasis' : 'machineMass', message: problem.message };
}

/** A load as the form shows it. The machine's weight is filled in only where the haul's own must be kept. */
export function fillLoadForm(load: Load, machineId: string | null, keepMachineWeight: boolean): Record<string, string> {
  const machine = load.cargo.find((item) => item.machineId !== null && item.machineId === machineId);
  const values: Record<string, string> = {
    machineId: asText(machineId),
    machineMass: machine && keepMachineWeight ? inPounds(machine.massKg) : '',
    machineBasis: machine && keepMachineWeight ? machine.basis : '',
    'load.balancePoint': inInches(load.balancePointM),
    'load.scale.gross': inPounds(load.scale?.grossKg ?? null),
    'load.scale.tongue': inPoundsOfForce(load.scale?.tongueN ?? null),
  };
  load.cargo
    .filter((item) => item !== machine)
    .forEach((item, row) => {
      values[`${CARGO}.${row}.name`] = item.name;
      values[`${CARGO}.${row}.mass`] = inPounds(item.massKg);
      values[`${CARGO}.${row}.basis`] = item.basis;
      values[`${CARGO}.${row}.remedy`] = asText(item.remedy);
    });
  (load.scale?.axleN ?? []).forEach((axle, at) => {
    values[`load.scale.axle.${at}`] = inPoundsOfForce(axle);
  });
  return values;
}
