import type { TireMarks } from '../../src/rules/facts/part.js';
import { lb } from '../../src/rules/units/mass.js';
import { psi } from '../../src/rules/units/pressure.js';

export type DemoTire = Omit<TireMarks, 'dateCode'>;

/**
 * Sidewall marks of common sizes. ST rows: published load tables, as in src/rules/tire, but for the newer 3,520 lb
 * marking, which like the 17.5 in row is from memory, unverified; here both are only what an invented sidewall says.
 */
export const ST_205_75R15_D = st('ST205/75R15', 'D', 2_150, 65);
export const ST_225_75R15_E = st('ST225/75R15', 'E', 2_840, 80);
export const ST_235_80R16_E = st('ST235/80R16', 'E', 3_520, 80);
/** The older marking of the same size: two of these carry less than a 7,000 lb axle promises. */
export const ST_235_80R16_E_OLD = st('ST235/80R16', 'E', 3_420, 80);
export const TRUCK_215_75R17_5_H: DemoTire = {
  size: '215/75R17.5',
  kind: 'truck',
  loadIndexSingle: 135,
  loadIndexDual: 133,
  maxLoadSingleKg: lb(4_805),
  maxLoadDualKg: lb(4_540),
  loadRange: 'H',
  speedSymbol: 'L',
  maxColdPressureKpa: psi(125),
};

/** ST tires are seldom marked for dual use; 0.88 of single is common practice, no source. */
function st(size: string, loadRange: string, maxLoadLb: number, coldPsi: number): DemoTire {
  return {
    size,
    kind: 'ST',
    loadIndexSingle: null,
    loadIndexDual: null,
    maxLoadSingleKg: lb(maxLoadLb),
    maxLoadDualKg: lb(Math.round((maxLoadLb * 0.88) / 10) * 10),
    loadRange,
    speedSymbol: 'L',
    maxColdPressureKpa: psi(coldPsi),
  };
}
