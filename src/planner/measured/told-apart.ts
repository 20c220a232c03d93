/** Smaller than this an entry counts as nothing: entries are small whole numbers, so true ones are far larger. */
const NOTHING = 1e-9;

export interface ToldApart {
  /** Columns whose unknown has one value in every exact solution. */
  readonly alone: readonly number[];
  /** Columns that span all others: as many as the rank. */
  readonly pivots: readonly number[];
}

/**
 * Which unknowns of a linear system its rows tell apart: brought to reduced echelon form, those whose pivot's row holds
 * nothing else. Textbook (Gauss and Jordan, largest pivot first). Cost: rows × columns × rank.
 */
export function tellApart(rows: readonly (readonly number[])[]): ToldApart {
  const matrix = rows.map((row) => [...row]);
  const columns = matrix[0]?.length ?? 0;
  const pivots: number[] = [];
  for (let column = 0; column < columns && pivots.length < matrix.length; column++)
    if (clearColumn(matrix, pivots.length, column)) pivots.push(column);
  const alone = pivots.filter((pivot, rank) =>
    (matrix[rank] as number[]).every((entry, column) => column === pivot || Math.abs(entry) < NOTHING),
  );
  return { alone, pivots };
}

/** Makes `column` a unit vector with its one in row `rank`; false where it has nothing from that row down. */
function clearColumn(matrix: number[][], rank: number, column: number): boolean {
  const at = (row: number) => (matrix[row] as number[])[column] as number;
  let best = rank;
  for (let row = rank + 1; row < matrix.length; row++) if (Math.abs(at(row)) > Math.abs(at(best))) best = row;
  const size = at(best);
  if (Math.abs(size) < NOTHING) return false;
  const pivot = (matrix[best] as number[]).map((entry) => entry / size);
  matrix[best] = matrix[rank] as number[];
  matrix[rank] = pivot;
  for (let row = 0; row < matrix.length; row++) {
    if (row === rank) continue;
    const times = at(row);
    matrix[row] = (matrix[row] as number[]).map((entry, i) => entry - times * (pivot[i] as number));
  }
  return true;
}
