const LACKS: Readonly<Record<string, string>> = {
  gvwr: "The plate's GVWR",
  'empty-mass': 'The empty weight',
  'cargo-mass': 'The weight of the cargo',
  'balance-point': "Where the load's balance point sits",
  'empty-tongue': 'The tongue weight of the empty trailer',
  'axle-places': 'Where the axles sit',
  'axle-ratings': "The axles' ratings",
  'tire-ratings': "The tires' ratings",
  'tire-table-row': 'What the tires carry at the pressure found',
  suspension: 'The kind of suspension',
  'coupler-rating': "The coupler's rating",
  'torsion-level': 'How level the torsion axles ride',
};

const STOPS: Readonly<Record<string, string>> = {
  gross: 'the whole weight cannot be worked out',
  tongue: 'the tongue weight cannot be worked out',
  'axle-loads': 'the axle loads cannot be worked out',
  'tire-loads': 'the tire loads cannot be worked out',
  'plate-check': 'the load cannot be held against the plate',
  'axle-check': 'the axles cannot be checked',
  'tire-check': 'the tires cannot be checked',
  'coupler-check': 'the coupler cannot be checked',
};

/** The missing fact, as the subject of a sentence. */
export function lacksWords(code: string): string {
  return LACKS[code] ?? capital(code.replaceAll('-', ' '));
}

/** What it keeps us from working out. */
export function stopsWords(code: string): string {
  return STOPS[code] ?? `${code.replaceAll('-', ' ')} cannot be worked out`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
