import type { HubLife } from '../../rules/history/hub-lives.js';
import { showDate, showDistance, showForce, showShare } from '../components/show-quantity.js';
import { positionWords } from './build-words.js';

const LACKS: Readonly<Record<NonNullable<HubLife['lacks']>, string>> = {
  position: 'nobody said which hub it is',
  'bearing-numbers': 'the numbers of both cones are not on record',
  'bearing-rating': 'no rating is on record for one of its cone numbers',
  'tire-size': 'no tire size can be read on that side, so nobody knows how often it turns',
  loads: 'no trip since has a load that is known',
};

const RATINGS: Readonly<Record<NonNullable<HubLife['rating']>, string>> = {
  catalogue: 'ratings from a catalogue page',
  series: 'ratings from a textbook table, some factors from memory',
  memory: 'one rating from memory, unverified',
};

/** One hub's bearings: `Axle 1 left: at most 2.1 % of the rating life used in 3,400 mi, …`. */
export function hubWords(hub: HubLife): string {
  const name = hub.position === null ? 'A hub' : capital(positionWords(hub.position));
  const since = hub.fittedOn === null ? '' : ` since ${showDate(hub.fittedOn)}`;
  if (hub.lifeUsed === null || hub.meanLoadN === null) {
    return `${name}: not known, because ${LACKS[hub.lacks ?? 'loads']}.`;
  }
  const unknown = hub.uncountedKm >= 1 ? `; ${showDistance(hub.uncountedKm)} more with a load nobody knows` : '';
  const bound = hub.isBound ? ', tongue weight unknown on some trips and taken as none' : '';
  const rating = hub.rating === null ? '' : ` (${RATINGS[hub.rating]})`;
  return `${name}: at most ${showShare(hub.lifeUsed, hub.lifeUsed < 0.1 ? 1 : 0)} of the rating life used${since}, in ${showDistance(hub.countedKm)} that did as much as a steady ${showForce(hub.meanLoadN)} on the hub${bound}${unknown}${rating}.`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
