/** What is said once at the top of the people page after something was done. */
const SAID: Readonly<Record<string, string>> = {
  revoked: 'The invitation is taken back; its link opens nothing now.',
  role: 'The role is changed, from their next page on.',
  left: 'They have left: they cannot get in, their keys are dead and nothing is sent to them.',
  bounced: 'Nothing more is sent to that address. The owners are told, and their open checks go to the backups.',
  address: 'Mail to them goes to the new address.',
  licence: 'The license is recorded.',
  key: 'The key is taken back.',
};

export function saidOf(key: unknown): string | null {
  return typeof key === 'string' ? (SAID[key] ?? null) : null;
}
