import type { ComponentChildren } from 'preact';

export interface Column<Row> {
  readonly label: string;
  readonly cell: (row: Row) => ComponentChildren;
  /** Numbers stand to the right. */
  readonly right?: boolean;
  /** Names the row: its header cell, and the title of its card on a phone. */
  readonly lead?: boolean;
}

/** Spelled out because the cards' layout on a phone (display: grid) would take the elements' own roles away. */
const AS = {
  table: { role: 'table' },
  rowgroup: { role: 'rowgroup' },
  row: { role: 'row' },
  columnheader: { role: 'columnheader' },
  rowheader: { role: 'rowheader' },
  cell: { role: 'cell' },
} as const;

interface TableProps<Row> {
  readonly caption: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
}

/** A table at a desk, a pile of cards on a phone. */
export function Table<Row>({ caption, columns, rows, rowKey }: TableProps<Row>) {
  return (
    <div class="table-frame">
      <table class="table to-cards" {...AS.table}>
        <caption>{caption}</caption>
        <thead {...AS.rowgroup}>
          <tr {...AS.row}>
            {columns.map((column) => (
              <th key={column.label} {...AS.columnheader} scope="col" class={column.right ? 'right' : undefined}>
                {column.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody {...AS.rowgroup}>
          {rows.map((row) => (
            <tr key={rowKey(row)} {...AS.row}>
              {columns.map((column) =>
                column.lead ? (
                  <th key={column.label} {...AS.rowheader} scope="row" class="lead" data-label={column.label}>
                    {column.cell(row)}
                  </th>
                ) : (
                  <td
                    key={column.label}
                    {...AS.cell}
                    class={column.right ? 'right' : undefined}
                    data-label={column.label}
                  >
                    {column.cell(row)}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
