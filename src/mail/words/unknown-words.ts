import { capital, list } from './show.js';

const LACKS: Readonly<Record<string, string>> = {
  gvwr: 'the GVWR on the plate',
  'empty-mass': 'the empty weight of the trailer',
  'cargo-mass': 'the weight of the load',
  'balance-point': 'where the load sits on the deck',
  'empty-tongue': 'the tongue weight of the empty trailer',
  'axle-places': 'where the axles sit',
  'axle-ratings': 'the ratings of the axles',
  'tire-ratings': 'the ratings of the tires',
  'tire-table-row': 'what the tires carry at the pressure found',
  'machine-mass': 'the weight of the machine',
  contact: 'what the machine stands on',
  'contact-count': 'how many wheels, tracks or pads the machine stands on',
  'contact-size': 'how large its wheels, tracks or pads are',
  'deck-material': 'what the deck is made of',
  'deck-wood': 'the wood of the deck',
  'wood-grade': 'the grade of the deck boards',
  'wood-strength': 'a published strength of this wood or board size',
  'plank-thickness': 'how thick the planks are',
  'plank-width': 'how wide the planks are',
  'crossmember-spacing': 'how far apart the crossmembers are',
  'deck-laid': 'when the deck was laid',
  suspension: 'the kind of suspension',
  'coupler-rating': 'the rating of the coupler',
  'machine-size': 'the width or length of the machine',
  'deck-place': 'where the deck lies along the trailer',
  'tilt-pivot': 'where the deck turns',
  'torsion-level': 'how level it rides on its torsion axles',
  'spring-rate': 'how stiff the torsion axles are',
  'axle-track': 'the distance between the wheels of an axle',
};

const STOPS: Readonly<Record<string, string>> = {
  gross: 'the whole weight',
  tongue: 'the weight on the tongue',
  'axle-loads': 'the load on each axle',
  'tire-loads': 'the load on each tire',
  'plate-check': 'whether it is inside the plate',
  'axle-check': 'whether the axles carry it',
  'tire-check': 'whether the tires carry it',
  'room-check': 'whether it fits on the deck',
  'climb-check': 'what the hitch feels while it drives on',
  'coupler-check': 'whether the coupler carries it',
  'deck-check': 'whether the planks bear it',
  'deck-life': 'how long the deck will last',
};

/** What is not known, and all that it keeps us from working out. */
export function unknownWords(lacks: string, stops: readonly string[]): string {
  const missing = LACKS[lacks] ?? lacks.replaceAll('-', ' ');
  const kept = list(stops.map((stop) => STOPS[stop] ?? stop.replaceAll('-', ' ')));
  return `${capital(missing)} is not known, so nobody can work out ${kept}.`;
}
