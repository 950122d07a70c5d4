import { Injectable } from '@nestjs/common';
import { PLAUSIBLE_SETTING } from '../../rules/facts/plausible.js';
import type { YardPolicy } from '../../rules/facts/yard-policy.js';
import { AuditStore } from '../../store/audit-store.js';
import { Database } from '../../store/database.js';
import { ResultStore } from '../../store/result-store.js';
import { type Yard, YardStore } from '../../store/yard-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type WokenYard, wakeYard } from '../assessments/wake-yard.js';
import { type Caller, may, signed } from '../caller.js';
import { Given, TEXT } from '../input/given.js';
import { merged } from '../input/merged.js';
import { isTimeZone } from '../input/time-zone.js';
import { done, invalid, notAllowed, type Outcome } from '../outcome.js';

type Settings = Pick<Yard, 'name' | 'timeZone' | 'place' | 'quietFromHour' | 'quietToHour' | 'planHour'>;

/** Settings left out stay as they are. */
export type YardSettingsInput = Partial<Settings> & { readonly policy?: Partial<YardPolicy> };

const R = PLAUSIBLE_SETTING;

/** Changes what the yard has decided for itself. Every trailer is judged anew by it. */
@Injectable()
export class SetYardSettings {
  constructor(
    private readonly database: Database,
    private readonly yards: YardStore,
    private readonly results: ResultStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: YardSettingsInput): Promise<Outcome<WokenYard>> {
    if (!may(caller, 'owner')) return notAllowed('owner');
    const saved = await this.database.inYard(caller.yardId, async (tx) => {
      const { id: _id, slug: _slug, demo: _demo, ...before } = await this.yards.get(tx);
      // What is no object is left as it came, to be refused when it is read.
      const policy = isObject(input.policy) ? merged(before.policy, input.policy) : (input.policy ?? before.policy);
      const given = Given.from(merged(before, { ...input, policy }));
      const after = readSettings(given);
      if (given.problems.length > 0) return invalid(given.problems);
      await this.yards.save(tx, after);
      await this.results.wakeAllOn(tx, caller.today);
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: 'set-yard-settings',
        subject: 'yard',
        subjectId: caller.yardId,
        trailerId: null,
        detail: { before, after },
      });
      return done(null);
    });
    return saved.ok ? done(await wakeYard(this.needs(), caller)) : saved;
  }

  private needs() {
    const { database, results, reassess } = this;
    return { database, results, reassess };
  }
}

function readSettings(given: Given): Settings & { readonly policy: YardPolicy } {
  const timeZone = given.needText('timeZone', "the yard's time zone", TEXT.name);
  if (timeZone !== '' && !isTimeZone(timeZone)) {
    given.refuse('timeZone', 'Choose a time zone of the list, such as America/Chicago.');
  }
  const policy = given.object('policy');
  return {
    name: given.needText('name', "the yard's name", TEXT.name),
    timeZone,
    place: given.text('place', 'where the yard is', TEXT.line),
    quietFromHour: given.needNumber('quietFromHour', { ...R.hour, what: 'the hour at which quiet begins' }),
    quietToHour: given.needNumber('quietToHour', { ...R.hour, what: 'the hour at which quiet ends' }),
    planHour: given.needNumber('planHour', { ...R.hour, what: 'the hour at which the day is planned' }),
    policy: {
      tireAgeLimitYears: policy.needNumber('tireAgeLimitYears', R.tireAgeLimit),
      weighFirstShare: policy.needNumber('weighFirstShare', R.weighFirst),
      useWindowDays: policy.needNumber('useWindowDays', R.useWindow),
      driftTrips: policy.needNumber('driftTrips', R.driftTrips),
      decayIndex: policy.number('decayIndex', R.decayIndex),
      deckLifeYears: policy.number('deckLifeYears', R.deckLifeYears),
    },
  };
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
