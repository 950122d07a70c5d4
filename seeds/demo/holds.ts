/** Trailers of the demo yard that must not go out today. */
export const DEMO_HOLDS: readonly { readonly yardNumber: string; readonly reason: string }[] = [
  { yardNumber: 'T-11', reason: 'Surge actuator leaks; brakes drag on the left. Waiting for a seal kit.' },
];
