/** A part of a long list. Pages count from 1. */
export interface PageOfList {
  readonly page: number;
  readonly perPage: number;
}

export interface ListPage<Row> {
  readonly rows: readonly Row[];
  /** How many there are on all pages. */
  readonly total: number;
}

export function offsetOf({ page, perPage }: PageOfList): number {
  return (Math.max(1, page) - 1) * perPage;
}

/** A text for `like` in which what was typed means only itself. */
export function containing(text: string): string {
  return `%${withoutNul(text).replace(/[\\%_]/g, '\\$&')}%`;
}

/** Postgres takes no NUL in a text, and nothing that it keeps holds one. */
export function withoutNul(text: string): string {
  return text.replaceAll('\0', '');
}
