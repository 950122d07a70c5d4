import { z } from 'zod';
import { KEEP_MONTHS, keepMaintenanceThrough, keepThrough } from '../../rules/inspection/proof.js';
import {
  driverReportRequired,
  driverReportsApply,
  fileRequired,
  inspectorTimeIsEnough,
  keepEvidenceThrough,
  notInspected,
} from '../../rules/law/records.js';
import { computation } from './computation.js';
import { civilDay, count, plain, words } from './values.js';

const MONTHS = z.number().min(0).max(1_200);

/** What a carrier keeps on paper. These bind motor carriers in interstate commerce; check your state. */
export const RECORD_COMPUTATIONS = [
  computation({
    name: 'papers-kept-through',
    about:
      'Until which day inspection reports, driver reports, maintenance records and an inspector’s evidence are kept.',
    source: '49 CFR 396.21(b)(1), 396.11(a)(4), 396.3(c), 396.19(b) and 396.25(e); of two periods the later.',
    input: z.object({
      paper: z
        .enum(['periodic-inspection', 'driver-report', 'maintenance-record', 'inspector-evidence'])
        .describe('Which paper. Of an inspector’s evidence the date is the day he stopped.'),
      dated: civilDay('Date of it'),
      leftOn: civilDay('Day the trailer left your hands, for a maintenance record').nullable(),
    }),
    output: z.object({ lastDay: z.string().describe('Last day on which it must be kept.') }),
    example: { paper: 'inspector-evidence', dated: '2024-05-31', leftOn: null },
    compute: ({ paper, dated, leftOn }) => {
      switch (paper) {
        case 'periodic-inspection':
          return { lastDay: keepThrough(dated, KEEP_MONTHS.periodicReport) };
        case 'driver-report':
          return { lastDay: keepThrough(dated, KEEP_MONTHS.driverReport) };
        case 'maintenance-record':
          return { lastDay: keepMaintenanceThrough(dated, leftOn) };
        case 'inspector-evidence':
          return { lastDay: keepEvidenceThrough(dated) };
      }
    },
  }),
  computation({
    name: 'records-required',
    about: 'Whether a file on the vehicle, and a driver’s report of the day, are asked of a carrier.',
    source: '49 CFR 396.3(b) and 396.11(a)(2)(i) and (a)(5).',
    input: z.object({
      daysControlled: count('Days in a row the carrier controls the vehicle'),
      vehicles: count('Commercial vehicles it operates; a truck and a trailer are two'),
      defectsFound: count('Defects that the driver found or was told of that day'),
    }),
    output: z.object({
      file: z.boolean().describe('Whether its inspection, repair and maintenance file is kept.'),
      driverReport: z.boolean().describe('Whether the driver writes a report of the day.'),
    }),
    example: { daysControlled: 29, vehicles: 1, defectsFound: 2 },
    compute: ({ daysControlled, vehicles, defectsFound }) => ({
      file: fileRequired(daysControlled),
      driverReport: driverReportsApply(vehicles) && driverReportRequired(defectsFound),
    }),
  }),
  computation({
    name: 'inspector-time',
    about:
      'Whether an annual inspector’s training and experience are long enough; knowledge and tools are asked besides.',
    source: '49 CFR 396.19(a)(3).',
    input: z.object({
      certificate: z.boolean().describe('A government-sponsored course, or a State or provincial certificate.'),
      trainingMonths: plain('Training, months', MONTHS),
      experienceMonths: plain('Experience, months', MONTHS),
    }),
    output: z.object({ enough: z.boolean().describe('Whether it is enough.') }),
    example: { certificate: false, trainingMonths: 5, experienceMonths: 7 },
    compute: (inspector) => ({ enough: inspectorTimeIsEnough(inspector) }),
  }),
  computation({
    name: 'combination-inspected',
    about: 'Which vehicles of a combination have no periodic inspection that is good on a day: each needs its own.',
    source: '49 CFR 396.17(a).',
    input: z.object({
      on: civilDay('Day of the haul'),
      vehicles: z
        .array(
          z.strictObject({
            name: words('Its name'),
            goodThrough: civilDay('Last day on which its inspection is good; null when it never passed').nullable(),
          }),
        )
        .min(1)
        .max(10)
        .describe('Truck and trailers.'),
    }),
    output: z.object({ missing: z.array(z.string()).describe('Those without; none when all are inspected.') }),
    example: {
      on: '2025-06-01',
      vehicles: [
        { name: 'truck', goodThrough: '2026-01-10' },
        { name: 'trailer', goodThrough: null },
      ],
    },
    compute: ({ on, vehicles }) => ({ missing: [...notInspected(vehicles, on)] }),
  }),
];
