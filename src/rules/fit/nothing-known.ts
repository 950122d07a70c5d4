import type { LoadLimits } from '../load/load-limits.js';
import { tongueBand } from '../load/tongue-band.js';

/** The limits of a trailer without a build sheet: none known, and said so. */
export const NOTHING_KNOWN: LoadLimits = {
  plate: null,
  axleGroup: null,
  axles: [],
  coupler: null,
  couplerTongue: null,
  towHitch: null,
  towHitchTongue: null,
  sharing: 'unknown',
  torsion: null,
  axleCentreM: null,
  emptyKg: null,
  emptyWeighed: false,
  emptyTongueN: null,
  band: tongueBand(null),
  hitchKnown: false,
  legal: [],
  ratingLacks: [{ lacks: 'gvwr', stops: 'plate-check' }],
};
