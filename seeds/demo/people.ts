/** The people of the demo yard. Every name here is invented. */
export interface DemoPerson {
  readonly key: 'owner' | 'shop' | 'hand' | 'driver' | 'viewer';
  readonly name: string;
  readonly email: string;
  readonly role: 'owner' | 'shop' | 'hand' | 'viewer';
  readonly cdl: 'A' | 'B' | 'none' | null;
}

export const DEMO_YARD = { name: 'Harrow Creek Equipment', slug: 'harrow-creek', timeZone: 'America/Chicago' } as const;

export const DEMO_PEOPLE: readonly DemoPerson[] = [
  { key: 'owner', name: 'Ines Hallam', email: 'ines@harrowcreek.example', role: 'owner', cdl: 'none' },
  { key: 'shop', name: 'Tomas Reyle', email: 'tomas@harrowcreek.example', role: 'shop', cdl: null },
  { key: 'hand', name: 'Wren Castell', email: 'wren@harrowcreek.example', role: 'hand', cdl: 'none' },
  { key: 'driver', name: 'Kit Ambrey', email: 'kit@harrowcreek.example', role: 'hand', cdl: 'A' },
  { key: 'viewer', name: 'Odile Farrow', email: 'odile@harrowcreek.example', role: 'viewer', cdl: null },
];
