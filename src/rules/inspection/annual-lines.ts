import type { MeasuredQuantity, SheetLine } from '../facts/check.js';

/**
 * The lines of an annual inspection of a trailer without air brakes: Appendix A to Part 396 of 49 CFR, item by item, in
 * our own words, the paragraph in brackets. Any one defect fails the trailer. The report must show what was looked at and
 * what was found (396.21(a)), so each item has its line. Numbers and which of them are from memory: `law/wear.ts`.
 */
export const ANNUAL_LINES: readonly SheetLine[] = [
  tick('brake-action', 'Brakes act at every wheel that must have them, none missing (1.a(1), 1.a(7), 1.i)', true),
  tick('brake-hardware', 'Shoes, springs, pins and bolts all there, none broken or loose (1.a(2), 1.a(3))', true),
  measure('lining', 'Lining at the middle of the shoe: fails at 1/16 in and less (1.a(6)(c))', 'lining-mm', true),
  tick('lining-sound', 'Lining fast on its shoe, no oil, grease or fluid on it (1.a(6)(a), 1.a(6)(b))', true),
  tick('drums', 'Drums and rotors: no crack that opens under braking, no piece off (1.c)', true),
  tick('brake-lines', 'Hoses and tubes sound, no leak, fluid above a quarter (1.d, 1.e, 1.j)', true),
  tick('breakaway', 'Breakaway there and working (1.i(2))', true),
  tick('antilock', 'Antilock and its lamp, where it was built with them (1.l)', true),
  tick('coupling', 'Coupler, eye or pintle: no crack, no weld repair, under a fifth worn away (2.b, 2.c)', true),
  tick('tongue', 'Tongue and slider: no crack, no play (2.d)', true),
  tick('fifth-wheel', 'Gooseneck plate or fifth wheel, if any: mounting, lock, no crack (2.a)', true),
  tick('chains', 'Safety chains: both there, no worn link, no makeshift repair (2.e)', true),
  tick('lighting', 'Every required lamp and reflector works (5)', true),
  tick('load-secure', 'Nothing can fall off, and the load is held (6)', true),
  tick('suspension', 'U-bolts, hangers and all that holds an axle in place: none cracked or loose (8.a, 8.c)', true),
  tick('springs', 'No leaf broken, missing or out of place; rubber and torsion parts sound (8.b)', true),
  tick('frame', 'Frame: no crack, no sag, no loose fastener (9.a)', true),
  tick('clearance', 'Tires and wheels touch nothing, loaded too; a sliding axle is pinned (9.b, 9.c)', true),
  measure('tread', 'Tread in the lowest groove: less than 2/32 in fails (10.b(8))', 'tread-depth-mm', true),
  tick('tires', 'Tires: no ply showing, no bulge, no leak, none touching its mate (10.b(2), 10.b(3), 10.b(6))', true),
  tick('tire-loads', 'Tires: made for the road, rated for their load and speed (10.b(1), 10.b(7), 10.c)', true),
  tick('wheels', 'Wheels, rims and rings: no crack, no oval hole (11.a, 11.b, 11.d)', true),
  tick('fasteners', 'Every wheel nut and stud there and tight (11.c)', true),
  tick('rear-guard', 'Rear guard, where one is required (15)', true),
  tick('decal', 'Report or decal on the trailer', false),
  { code: 'report', text: 'The report', kind: 'photo', quantity: null, safety: false },
];

function tick(code: string, text: string, safety: boolean): SheetLine {
  return { code, text, kind: 'tick', quantity: null, safety };
}

function measure(code: string, text: string, quantity: MeasuredQuantity, safety: boolean): SheetLine {
  return { code, text, kind: 'measure', quantity, safety };
}
