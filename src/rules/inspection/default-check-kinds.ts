import type { CheckKind } from '../facts/check.js';

export const DEFAULT_CHECK_KINDS: readonly Omit<CheckKind, 'id'>[] = [];
