interface Openness {
  readonly acceptedAt: Date | null;
  readonly revokedAt: Date | null;
  readonly expiresAt: Date;
}

/** Whether the link of an invitation still works. */
export function isOpen({ acceptedAt, revokedAt, expiresAt }: Openness, now: Date): boolean {
  return acceptedAt === null && revokedAt === null && expiresAt > now;
}
