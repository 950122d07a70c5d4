import type { CheckFitInput } from '../../use-cases/assessments/check-fit.js';
import type { JobInput } from '../../use-cases/input/job-input.js';
import type { FieldProblem } from '../../use-cases/outcome.js';
import type { ChoicesScreen } from '../../use-cases/show/show-choices.js';
import type { JobScreen } from '../../use-cases/show/show-job.js';
import { asText, asYesNo, inMiles } from './fill-form.js';
import { fillLoadForm, loadProblem, type ReadLoad } from './load-form.js';
import type { FormReader } from './read-form.js';

/** Stands for a trailer that was typed and is not there; the use case refuses it and the page says which number. */
const NO_SUCH_TRAILER = 'no such trailer';

/** A haul as it was typed; without a trailer while none is named. */
type HaulForm = Omit<CheckFitInput, 'trailerId'> & { readonly trailerId: string | null };

/** What a haul to come is, as booking and asking both need it. */
export function readHaulForm(form: FormReader, choices: ChoicesScreen, read: ReadLoad): HaulForm {
  const driver = form.text('driver.name');
  return {
    trailerId: form.text('trailerNumber') === null ? null : (choices.trailerId ?? NO_SUCH_TRAILER),
    startsOn: form.need('startsOn') as JobInput['startsOn'],
    endsOn: (form.text('endsOn') ?? form.need('startsOn')) as JobInput['endsOn'],
    distanceKm: form.miles('distance'),
    work: form.text('work') as JobInput['work'],
    commercial: form.flag('commercial'),
    machineId: read.machineId,
    load: read.load,
    towVehicleId: form.text('towVehicleId'),
    driver: driver === null ? null : { name: driver, cdl: form.text('driver.cdl') as 'A' | 'B' | 'none' | null },
    haulerPersonId: form.text('haulerPersonId'),
  };
}

export function readJobForm(form: FormReader, choices: ChoicesScreen, read: ReadLoad): JobInput {
  return {
    ...readHaulForm(form, choices, read),
    name: form.need('name'),
    customer: form.text('customer'),
    note: form.text('note'),
  };
}

/** Problems of a haul in the words and fields of the page: people type a trailer's number, never its id. */
export function haulProblem(form: FormReader, read: ReadLoad, problem: FieldProblem): FieldProblem {
  if (problem.field !== 'trailerId') return loadProblem(read, problem);
  const typed = form.text('trailerNumber') ?? 'typed';
  return {
    field: 'trailerNumber',
    message: `No trailer in service here has the number ${typed}. Enter another.`,
  };
}

export function fillJobForm({ job, row }: JobScreen): Record<string, string> {
  return {
    name: job.name,
    trailerNumber: row.trailer?.number ?? '',
    startsOn: job.startsOn,
    endsOn: job.endsOn,
    distance: inMiles(job.distanceKm),
    work: job.work,
    customer: asText(job.customer),
    commercial: asYesNo(job.commercial),
    towVehicleId: asText(job.towVehicle?.id ?? null),
    'driver.name': asText(job.driver?.name ?? null),
    'driver.cdl': asText(job.driver?.cdl ?? null),
    haulerPersonId: asText(job.haulerPersonId),
    note: asText(job.note),
    ...fillLoadForm(job.load, job.machineId, false),
  };
}
