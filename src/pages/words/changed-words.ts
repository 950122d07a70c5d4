import type { ChangedSince } from '../../use-cases/checks/changed-since.js';
import { showDate } from '../components/show-quantity.js';
import type { ChangedSaid } from '../sheets/sheet-answer.js';

/** What changed about a trailer between opening a sheet and its arrival. The sheet was kept, and so was the other. */
export function changedWords(changed: ChangedSince, trailerId: string): ChangedSaid {
  const trailer = `/trailers/${trailerId}`;
  switch (changed.kind) {
    case 'renumbered':
      return { text: `The trailer was ${changed.from} and is ${changed.to} now.`, path: trailer };
    case 'gone':
      return { text: `The trailer is ${changed.status} by now.`, path: trailer };
    case 'build-changed':
      return {
        text: 'The build sheet was changed meanwhile: limits beside the lines may be others now.',
        path: trailer,
      };
    case 'sheet-changed':
      return { text: 'The lines of this check were changed meanwhile: see whether one is missing.', path: trailer };
    case 'held':
      return {
        text: `The trailer was put on hold on ${showDate(changed.openedOn)}: ${changed.reason}. It must not go out.`,
        path: trailer,
      };
    case 'checked':
      return {
        text: `Somebody else recorded this check meanwhile, ${changed.outcome === 'pass' ? 'passed' : 'failed'} on ${showDate(changed.doneOn)}. Both are kept.`,
        path: `${trailer}/records/${changed.checkRecordId}`,
      };
  }
}
