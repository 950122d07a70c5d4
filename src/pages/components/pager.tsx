interface Paging {
  /** Counted from 1. */
  readonly page: number;
  readonly perPage: number;
  readonly total: number;
}

interface PagerProps {
  readonly paging: Paging;
  readonly path: string;
  /** The filter, kept while turning pages. */
  readonly query: Readonly<Record<string, string>>;
  readonly what: string;
}

export function Pager({ paging, path, query, what }: PagerProps) {
  const pages = Math.max(1, Math.ceil(paging.total / paging.perPage));
  if (pages === 1) return null;
  const link = (page: number) => `${path}?${new URLSearchParams({ ...query, page: String(page) })}`;
  return (
    <nav class="pager" aria-label={`Pages of ${what}`}>
      {paging.page > 1 ? (
        <a class="button" rel="prev" href={link(paging.page - 1)}>
          Earlier in the list
        </a>
      ) : (
        <span />
      )}
      <span>
        Page {paging.page} of {pages}
      </span>
      {paging.page < pages ? (
        <a class="button" rel="next" href={link(paging.page + 1)}>
          Further in the list
        </a>
      ) : (
        <span />
      )}
    </nav>
  );
}
