import { SetMetadata } from '@nestjs/common';

export const OPEN = 'axlebook:open';

/** Marks a route that needs no sign-in. Every route without this mark is closed, so that a forgotten one is safe. */
export const Open = () => SetMetadata(OPEN, true);
