/** "1 to 7", "1, 2", "1 to 3, 5": ids of rows in their order, runs of numbers shortened; the first few runs of many. */
export function rowsInWords(ids: readonly string[], most = 4): string {
  const runs: { first: string; last: string; count: number }[] = [];
  for (const id of ids) {
    const run = runs.at(-1);
    if (run !== undefined && follows(run.last, id)) {
      run.last = id;
      run.count++;
    } else runs.push({ first: id, last: id, count: 1 });
  }
  const words = runs.map(({ first, last, count }) => {
    return count === 1 ? first : `${first}${count === 2 ? ", " : " to "}${last}`;
  });
  return words.length > most ? `${words.slice(0, most).join(", ")} and more` : words.join(", ");
}

/** True when two ids are of one block and their numbers follow each other; pieces of one line follow too ("14a", "14b"). */
function follows(before: string, id: string): boolean {
  const [a, b] = [parts(before), parts(id)];
  if (a === null || b === null || a.block !== b.block) return false;
  return b.number === a.number + 1 || (b.number === a.number && b.piece !== a.piece);
}

function parts(id: string) {
  const found = /^(.*?)(\d+)([a-z]*)$/.exec(id);
  return found === null ? null : { block: found[1] ?? "", number: Number(found[2]), piece: found[3] ?? "" };
}
