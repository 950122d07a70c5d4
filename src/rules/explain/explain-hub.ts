import { LIFE_EXPONENT } from '../bearing/dynamic-rating.js';
import type { HubLife } from '../history/hub-lives.js';
import { type Working, workOut } from './working.js';

/** How the share of its bearings' life that a hub has used was worked out; null while something is lacking. */
export function explainHubLife(hub: HubLife): Working | null {
  const { lifeUsed, l10Km, meanLoadN, countedKm } = hub;
  if (lifeUsed === null || l10Km === null || meanLoadN === null || countedKm === 0) return null;
  return workOut({
    ...{
      of: 'hub-life',
      subject: hub.position,
      unit: 'share',
      base: { loadN: meanLoadN as number, km: countedKm as number },
    },
    formula: 'distance with a known load ÷ L10 at the mean of the loads, each to the power 10/3',
    source: 'ISO 281:2007, basic rating life of roller bearings. Hubs fail by water and old grease long before.',
    leaves: [
      {
        ...{ name: 'hub-load', value: meanLoadN, unit: 'N', basis: hub.isBound ? 'assumed' : 'stated' },
        put: (one, value) => ({ ...one, loadN: value }),
      },
      {
        ...{ name: 'travelled', value: countedKm, unit: 'km', basis: 'stated' },
        put: (one, value) => ({ ...one, km: value }),
      },
      { name: 'rated-life', value: l10Km, unit: 'km', basis: 'published', put: (one) => one },
    ],
    compute: ({ loadN, km }) => lifeUsed * (loadN / meanLoadN) ** LIFE_EXPONENT.roller * (km / countedKm),
  });
}
