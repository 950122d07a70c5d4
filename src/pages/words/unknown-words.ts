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
  'torsion-level': 'How level it rides on its torsion axles',
  'spring-rate': 'How stiff the torsion axles are',
  ratings: 'Enough ratings to hold it from above',
  'axle-track': 'The distance between the wheels of an axle',
  'level-height': 'The hitch height at which it stands level',
  'build-sheet': 'What the trailer is made of',
  axles: 'How many axles it has',
  tires: 'What tires are on it',
  'tire-date-codes': "The tires' date codes",
  hitch: 'The kind of hitch',
  distance: 'How far it has been driven',
  'trip-distance': 'The miles of some trips',
  'trip-roads': 'What some trips went through',
  'registration-date': 'When the registration runs out',
  'insurance-date': 'When the insurance runs out',
  'machine-mass': "The machine's weight",
  contact: 'What the machine stands on',
  'contact-count': 'How many wheels, tracks or pads the machine stands on',
  'contact-size': "How large the machine's wheels, tracks or pads are",
  'deck-material': 'What the deck is made of',
  'deck-wood': 'The wood of the deck',
  'wood-grade': 'The grade of the deck boards',
  'wood-strength': 'A published strength of this wood or board size',
  'plank-thickness': 'How thick the planks are',
  'plank-width': 'How wide the planks are',
  'crossmember-spacing': 'How far apart the crossmembers are',
  'deck-laid': 'When the deck was laid',
  'proof-seen': 'Whether the proof is on the trailer',
  'machine-size': "The machine's width or length",
  'deck-place': 'Where the deck lies along the trailer',
  'tilt-pivot': 'Where the deck turns',
  'tow-vehicle-rating': "The tow vehicle's rating",
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
  everything: 'nothing can be worked out',
  payload: 'what it may carry cannot be worked out',
  'tire-age': 'the age of the tires cannot be told',
  'tongue-share': 'the share on the tongue cannot be judged',
  'due-by-distance': 'checks by miles have no day',
  'harsh-service': 'salt and gravel are not counted',
  'due-date': 'no reminder can be set for it',
  proof: 'a roadside stop may find it missing',
  'room-check': 'nobody can tell whether it fits on the deck',
  'climb-check': 'what the hitch feels while it drives on cannot be worked out',
  'deck-check': 'the planks cannot be held against the machine',
  'deck-life': 'the life of the deck cannot be forecast',
  'licence-check': 'the license line cannot be checked',
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
