export interface Table {
  readonly head: readonly string[];
  /** The first cell of a row names it. */
  readonly rows: readonly (readonly string[])[];
}

/** The numbers of a plot. The caption repeats the plot's title for those who jump from table to table. */
export function Numbers({ caption, table }: { caption: string; table: Table }) {
  return (
    <table className="numbers figures">
      <caption className="for-readers">{caption}</caption>
      <thead>
        <tr>
          {table.head.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {table.rows.map(([name = '', ...cells], n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
          <tr key={n}>
            <th scope="row">{name}</th>
            {cells.map((cell, column) => (
              <td key={table.head[column + 1]}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
