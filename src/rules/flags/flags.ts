import { order } from '../history/order.js';
import { batteryFlatFlags } from './battery-flat.js';
import { classDriftFlags } from './class-drift.js';
import { deckPlankFlags } from './deck-plank.js';
import type { Flag, Severity } from './flag.js';
import type { FlagContext } from './flag-context.js';
import { jackLoadFlags } from './jack-load.js';
import { licenceLineFlags } from './licence-line.js';
import { loweredFlags } from './lowered.js';
import { missingProofFlags } from './missing-proof.js';
import { onHoldFlags } from './on-hold.js';
import { outgrownFlags } from './outgrown.js';
import { overLimitFlags } from './over-limit.js';
import { overdueCheckFlags } from './overdue-check.js';
import { rampSupportFlags } from './ramp-support.js';
import { softDeckFlags } from './soft-deck.js';
import { tieDownsShortFlags } from './tie-downs-short.js';
import { tireAgeFlags } from './tire-age.js';
import { tireMismatchFlags } from './tire-mismatch.js';
import { tirePressureFlags } from './tire-pressure.js';
import { tongueShareFlags } from './tongue-share.js';
import { tooLongFlags } from './too-long.js';
import { tooWideFlags } from './too-wide.js';
import { wearingFlags } from './wearing.js';
import { wornPastLimitFlags } from './worn-past-limit.js';

/** Every rule that can raise a flag. A new rule is a new file and one line here. */
const RULES: readonly ((context: FlagContext) => readonly Flag[])[] = [
  onHoldFlags,
  overLimitFlags,
  tongueShareFlags,
  jackLoadFlags,
  rampSupportFlags,
  tooWideFlags,
  tooLongFlags,
  tieDownsShortFlags,
  softDeckFlags,
  deckPlankFlags,
  tireAgeFlags,
  tirePressureFlags,
  tireMismatchFlags,
  licenceLineFlags,
  wornPastLimitFlags,
  batteryFlatFlags,
  wearingFlags,
  overdueCheckFlags,
  missingProofFlags,
  classDriftFlags,
  outgrownFlags,
  loweredFlags,
];

const SEVERITY_ORDER: Readonly<Record<Severity, number>> = { stop: 0, limit: 1, watch: 2 };

/** All flags of one trailer, worst first. */
export function raiseFlags(context: FlagContext): readonly Flag[] {
  return RULES.flatMap((rule) => rule(context)).sort(
    (a, b) => SEVERITY_ORDER[a.severity] - SEVERITY_ORDER[b.severity] || order(a.key, b.key),
  );
}
