import { Injectable } from '@nestjs/common';
import { buildOn } from '../../rules/facts/build-on.js';
import type { Flag } from '../../rules/flags/flag.js';
import type { Contradiction } from '../../rules/trailer/contradictions.js';
import { AuditStore } from '../../store/audit-store.js';
import { BuildStore } from '../../store/build-store.js';
import { Database } from '../../store/database.js';
import { TrailerStore } from '../../store/trailer-store.js';
import { Reassess } from '../assessments/reassess.js';
import { type Caller, may, recordedBy, signed } from '../caller.js';
import { type BuildSheetInput, readBuildSheet } from '../input/build-sheet-input.js';
import { Given } from '../input/given.js';
import { done, invalid, notAllowed, notFound, type Outcome } from '../outcome.js';

export interface ReviseBuildSheetInput {
  readonly trailerId: string;
  readonly build: BuildSheetInput;
  /** For a change of the trailer: the day from which it is built so. With `correctsId`: that version's day unless given. */
  readonly effectiveFrom?: string | null;
  /** For a mistake in a version: which one. Left out, this is a new version. */
  readonly correctsId?: string | null;
}

interface RevisedBuildSheet {
  readonly buildSheetId: string;
  readonly contradictions: readonly Contradiction[];
  readonly raised: readonly Flag[];
}

/**
 * Writes a version of the build sheet, whole: either what the trailer is from a day on, or what an earlier version
 * should have said. Trips are judged against the build of their day; the mended version stays in the history.
 */
@Injectable()
export class ReviseBuildSheet {
  constructor(
    private readonly database: Database,
    private readonly trailers: TrailerStore,
    private readonly builds: BuildStore,
    private readonly audit: AuditStore,
    private readonly reassess: Reassess,
  ) {}

  async run(caller: Caller, input: ReviseBuildSheetInput): Promise<Outcome<RevisedBuildSheet>> {
    if (!may(caller, 'shop')) return notAllowed('shop');
    const given = Given.from(input);
    const trailerId = given.needId('trailerId', 'the trailer');
    const correctsId = given.id('correctsId', 'the version to mend');
    const build = readBuildSheet(given.object('build'));
    if (!given.has('build')) given.refuse('build', 'Give the whole build sheet; what is left out becomes unknown.');
    const from = given.date('effectiveFrom', 'the day from which it is built so', {
      notAfter: caller.today,
      notAfterIs: 'today',
    });
    if (given.problems.length > 0) return invalid(given.problems);

    return this.database.inYard(caller.yardId, async (tx) => {
      await this.trailers.lock(tx, trailerId);
      const facts = await this.trailers.findFacts(tx, trailerId);
      if (facts === null) return notFound('trailer');
      const mended = facts.builds.find((one) => one.id === correctsId) ?? null;
      if (correctsId !== null && mended === null) return notFound('build sheet');
      const effectiveFrom = from ?? mended?.effectiveFrom ?? caller.today;
      const sameDay = facts.builds.find((one) => one.effectiveFrom === effectiveFrom && one.id !== correctsId);
      if (sameDay !== undefined) {
        return invalid([
          {
            field: 'effectiveFrom',
            message: `A version from ${effectiveFrom} stands already: mend that one, or enter another day.`,
          },
        ]);
      }
      const after = { ...build, effectiveFrom };
      const buildSheetId = await this.builds.insert(tx, trailerId, after, { ...recordedBy(caller), correctsId });
      await this.audit.append(tx, {
        ...signed(caller),
        at: caller.now,
        action: mended === null ? 'change-build' : 'correct-build',
        subject: 'build-sheet',
        subjectId: buildSheetId,
        trailerId,
        detail: { before: mended ?? buildOn(facts.builds, effectiveFrom), after },
      });
      const { assessment, raised } = await this.reassess.trailer(tx, caller, trailerId);
      return done({ buildSheetId, contradictions: assessment.contradictions, raised });
    });
  }
}
