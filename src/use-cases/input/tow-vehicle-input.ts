import { PLAUSIBLE_BUILD, PLAUSIBLE_TOW_VEHICLE } from '../../rules/facts/plausible.js';
import type { TowVehicle } from '../../rules/facts/use.js';
import { type Given, TEXT } from './given.js';
import type { Incoming } from './incoming.js';

export type TowVehicleInput = Incoming<Omit<TowVehicle, 'id'>>;

const R = PLAUSIBLE_TOW_VEHICLE;

export function readTowVehicle(given: Given): Omit<TowVehicle, 'id'> {
  return {
    name: given.needText('name', "the tow vehicle's name", TEXT.name),
    gvwrKg: given.number('gvwrKg', R.gvwr),
    massKg: given.number('massKg', R.mass),
    gcwrKg: given.number('gcwrKg', R.gcwr),
    hitchRatingKg: given.number('hitchRatingKg', R.hitchRating),
    hitchTongueN: given.number('hitchTongueN', R.hitchTongue),
    ballSizeM: given.number('ballSizeM', PLAUSIBLE_BUILD.ballSize),
    ballHeightM: given.number('ballHeightM', R.ballHeight),
  };
}
