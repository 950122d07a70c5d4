import type { Load, TieDown } from '../../rules/facts/load.js';
import type { Newtons } from '../../rules/units/force.js';
import { newtons } from '../../rules/units/force.js';
import type { LoadInput } from '../../use-cases/input/load-input.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import type { TrailerFormScreen } from '../../use-cases/show/show-trailer-form.js';
import { asText, inInches, inPounds, inPoundsOfForce } from './fill-form.js';
import type { FormReader } from './read-form.js';

const CARGO = 'load.cargo';
const TIE_DOWNS = 'load.tieDowns';
const TICKET_AXLES = 3;

export interface ReadLoad {
  readonly machineId: string | null;
  readonly load: LoadInput;
  /** Where the machine's own line stands in the cargo, if its weight or place was typed; after all the others. */
  readonly machineAt: number | null;
}

/**
 * Reads machine, cargo, place and ticket. The machine comes along by itself with the weight on file; a weight typed
 * for this haul takes its place, and a place typed for it goes along.
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
    fromCouplerM: form.inches(`${CARGO}.${row}.fromCoupler`),
  }));
  const machineKg = form.pounds('machineMass');
  const machine = machines.find((one) => one.id === machineId);
  const fromCouplerM = form.inches('machineFromCoupler');
  const machineAt = (machineKg !== null || fromCouplerM !== null) && machineId !== null ? cargo.length : null;
  if (machineAt !== null) {
    const typed = (form.text('machineBasis') ?? 'stated') as Load['cargo'][number]['basis'];
    cargo.push({
      name: machine?.name ?? 'Machine',
      massKg: machineKg ?? machine?.massKg ?? (Number.NaN as Load['cargo'][number]['massKg']),
      basis: machineKg === null ? (machine?.basis ?? typed) : typed,
      machineId,
      remedy: null,
      fromCouplerM,
    });
  }
  return {
    machineId,
    machineAt,
    load: {
      cargo,
      balancePointM: form.inches('load.balancePoint'),
      scale: readTicket(form),
      hitchHeightM: form.inches('load.hitchHeight'),
      offCentreM: form.inches('load.offCentre'),
      tieDowns: readTieDowns(form),
    },
  };
}

/** Nothing entered is nobody having said; that nothing ties it down must be ticked. */
function readTieDowns(form: FormReader): LoadInput['tieDowns'] {
  const rows = form.rows(TIE_DOWNS, ['count', 'workingLoad']);
  if (rows === 0) return form.ticked('load.untied') ? [] : null;
  return Array.from({ length: rows }, (_, row) => ({
    count: form.number(`${TIE_DOWNS}.${row}.count`) ?? Number.NaN,
    workingLoadKg: form.pounds(`${TIE_DOWNS}.${row}.workingLoad`),
    way: (form.text(`${TIE_DOWNS}.${row}.way`) ?? 'direct') as TieDown['way'],
  }));
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

/** Problems of the machine's own line belong to the fields where its weight and place were typed. */
export function loadProblem(read: ReadLoad, problem: FieldProblem): FieldProblem {
  const own = read.machineAt === null ? null : `load.cargo[${read.machineAt}].`;
  if (own === null || !problem.field.startsWith(own)) return problem;
  const name = problem.field.slice(own.length);
  const field = { basis: 'machineBasis', fromCouplerM: 'machineFromCoupler' }[name] ?? 'machineMass';
  return { field, message: problem.message };
}

/** A load as the form shows it. The machine's weight is filled in only where the haul's own must be kept. */
export function fillLoadForm(load: Load, machineId: string | null, keepMachineWeight: boolean): Record<string, string> {
  const machine = load.cargo.find((item) => item.machineId !== null && item.machineId === machineId);
  const values: Record<string, string> = {
    machineId: asText(machineId),
    machineMass: machine && keepMachineWeight ? inPounds(machine.massKg) : '',
    machineBasis: machine && keepMachineWeight ? machine.basis : '',
    machineFromCoupler: inInches(machine?.fromCouplerM ?? null),
    'load.balancePoint': inInches(load.balancePointM),
    'load.hitchHeight': inInches(load.hitchHeightM),
    'load.offCentre': inInches(load.offCentreM),
    'load.untied': load.tieDowns?.length === 0 ? 'yes' : '',
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
      values[`${CARGO}.${row}.fromCoupler`] = inInches(item.fromCouplerM);
    });
  load.tieDowns?.forEach((tieDown, row) => {
    values[`${TIE_DOWNS}.${row}.count`] = asText(tieDown.count);
    values[`${TIE_DOWNS}.${row}.workingLoad`] = inPounds(tieDown.workingLoadKg);
    values[`${TIE_DOWNS}.${row}.way`] = tieDown.way;
  });
  (load.scale?.axleN ?? []).forEach((axle, at) => {
    values[`load.scale.axle.${at}`] = inPoundsOfForce(axle);
  });
  return values;
}
