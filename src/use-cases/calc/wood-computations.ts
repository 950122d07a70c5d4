import { z } from 'zod';
import { elasticityFromGravity, ruptureFromGravity } from '../../rules/deck/clear-wood.js';
import { PLATE_YIELD, plateStress } from '../../rules/deck/tread-plate.js';
import { computation } from './computation.js';
import { answer, force, length, plain } from './values.js';

/** Decks that no table of graded boards covers. */
export const WOOD_COMPUTATIONS = [
  computation({
    name: 'wood-from-gravity',
    about: 'Strength and stiffness of faultless wood guessed from its specific gravity, where its species has no row.',
    source: 'UFC 3-130-04, table 2-2, crediting the USDA Forest Products Laboratory. Never a design value.',
    input: z.object({
      gravity: plain('Oven-dry weight over volume at that moisture, against water', z.number().min(0.1).max(1.3)),
      state: z.enum(['green', 'dry']).describe('Dry: 12 % moisture.'),
    }),
    output: z.object({
      ruptureKpa: answer('Modulus of rupture, kPa'),
      elasticityKpa: answer('Modulus of elasticity, kPa'),
    }),
    example: { gravity: 0.51, state: 'dry' },
    compute: ({ gravity, state }) => ({
      ruptureKpa: ruptureFromGravity(gravity, state),
      elasticityKpa: elasticityFromGravity(gravity, state),
    }),
  }),
  computation({
    name: 'tread-plate-stress',
    about: 'Bending stress in a steel deck under what stands on it, as a strip as wide as that.',
    source: 'Statics of beams; yield of ASTM A36 from memory, unverified.',
    input: z.object({
      loadN: force('The load', z.number().gt(0).max(1e6)),
      patchM: length('Its length across the supports, 0 for a point', z.number().min(0).max(20)),
      spanM: length('Between crossmembers', z.number().gt(0).max(10)),
      stripM: length('Width of what stands on it', z.number().gt(0).max(5)),
      baseThicknessM: length('Plate without its raised pattern', z.number().gt(0).max(0.1)),
    }),
    output: z.object({ stressKpa: answer('Bending stress, kPa'), yieldKpa: answer('Yield of common plate, kPa') }),
    example: { loadN: 6672.3324, patchM: 0.2032, spanM: 0.4064, stripM: 0.254, baseThicknessM: 0.004763 },
    compute: ({ stripM, baseThicknessM, ...load }) => ({
      stressKpa: plateStress(load, stripM, baseThicknessM),
      yieldKpa: PLATE_YIELD,
    }),
  }),
];
