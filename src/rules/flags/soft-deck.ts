import { earliest } from '../calendar/civil-date.js';
import { REPLACE_BOARD } from '../inspection/soft-boards.js';
import type { Flag } from './flag.js';
import type { FlagContext } from './flag-context.js';
import { machineOf } from './usual-machine.js';

/**
 * Boards that probing found soft, whatever a forecast says. Past half an inch they are replaced: `stop` while a machine
 * is booked onto them, `limit` otherwise; past a quarter they are marked: `watch`. Common practice, no source.
 * Wheels go through soft boards, and small ones first.
 */
export function softDeckFlags({ trailer, probed }: FlagContext): readonly Flag[] {
  const { soft, marked } = probed;
  const boards = soft.length > 0 ? soft : marked;
  if (boards.length === 0) return [];
  const hauls = soft.length > 0 ? trailer.jobs.filter((job) => machineOf(job) !== null) : [];
  return [
    {
      key: 'soft-deck',
      rule: 'soft-deck',
      severity: soft.length === 0 ? 'watch' : hauls.length > 0 ? 'stop' : 'limit',
      since: earliest(boards.map((one) => one.on)),
      evidence: {
        kind: 'soft-deck',
        boards,
        boardCount: trailer.build?.deck.boardCount ?? null,
        replaceM: REPLACE_BOARD,
        jobIds: hauls.map((job) => job.id),
        machineIds: [...new Set(hauls.flatMap((job) => machineOf(job) ?? []))],
      },
      clears: [{ kind: 'replace-boards', boards: boards.map((one) => one.board) }],
    },
  ];
}
