import type { CheckKind } from '../facts/check.js';
import { order } from '../history/order.js';
import type { Reader } from './letter.js';

/** Who takes letters: nobody who has left, nobody whose address has failed. */
export class Readers {
  private readonly byId: ReadonlyMap<string, Reader>;
  private readonly sorted: readonly Reader[];

  constructor(readers: readonly Reader[]) {
    this.sorted = readers.toSorted((a, b) => order(a.personId, b.personId));
    this.byId = new Map(this.sorted.map((reader) => [reader.personId, reader]));
  }

  /** The person, if letters reach them. */
  reached(personId: string | null): Reader | null {
    const reader = personId === null ? undefined : this.byId.get(personId);
    return reader !== undefined && takesLetters(reader) ? reader : null;
  }

  /** The yard's owner: of several the first by id, so that a thing is told once. */
  owner(): Reader | null {
    return this.owners()[0] ?? null;
  }

  owners(): readonly Reader[] {
    return this.sorted.filter((reader) => reader.role === 'owner' && takesLetters(reader));
  }

  /** Everybody who can keep a trailer in. */
  ownersAndShop(): readonly Reader[] {
    return this.sorted.filter((reader) => (reader.role === 'owner' || reader.role === 'shop') && takesLetters(reader));
  }

  /** People still here whose address has failed. */
  unreachable(): readonly Reader[] {
    return this.sorted.filter((reader) => reader.state === 'active' && !reader.reachable);
  }
}

function takesLetters(reader: Reader): boolean {
  return reader.state === 'active' && reader.reachable;
}

export interface Recipient {
  readonly reader: Reader;
  /** True when it goes to somebody else because the check has no person of its own who can be reached. */
  readonly unowned: boolean;
}

/**
 * Who hears of a check: its own person; who has handed it on is passed over; else the backup; else the yard's owner.
 * A check handed on is told to the owner too. An owner who has handed it on and has nobody to hand it to keeps it.
 */
export function recipientsOf(kind: CheckKind, readers: Readers, handedOnBy: ReadonlySet<string>): readonly Recipient[] {
  const own = readers.reached(kind.ownerPersonId);
  const backup = readers.reached(kind.backupPersonId);
  const owner = readers.owner();
  const unowned = own === null;
  const willing = [own, backup].find((reader) => reader !== null && !handedOnBy.has(reader.personId)) ?? null;
  const told = new Map<string, Reader>();
  for (const reader of [willing ?? owner, handedOnBy.size > 0 ? owner : null]) {
    if (reader !== null) told.set(reader.personId, reader);
  }
  return [...told.values()].map((reader) => ({ reader, unowned }));
}
