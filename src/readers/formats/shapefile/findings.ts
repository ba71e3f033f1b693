import { type Finding, listed, say, unplaced } from "../../../core/finding.ts";

/** A shapefile without its table. */
export function withoutTable(name: string): Finding {
  return unplaced(
    "readers/without-table",
    "warning",
    say`There is no .dbf with ${name}, so its features have no names and no values.`,
    say`A shapefile is several files of one name: .shp has the shapes, .dbf the table, .prj the coordinate system.`,
    say`Bring in all of them, packed into one zip archive.`,
  );
}

/** A table that does not belong to its shapes, or cannot be read. */
export function tableUnfit(name: string, why: string): Finding {
  return unplaced(
    "readers/table-unfit",
    "warning",
    say`The table of ${name} is not used: ${why}.`,
    say`Which of its lines belongs to which shape would be a guess.`,
    say`Get the files again; .shp and .dbf have to come from one writing.`,
  );
}

/** An index that leads nowhere. */
export function indexUnfit(name: string): Finding {
  return unplaced(
    "readers/index-unfit",
    "note",
    say`The .shx of ${name} does not fit its .shp; the shapes are read one after another instead.`,
    say`Shapes that were changed or taken out later may show in their old form.`,
    say`Look at the shapes, or have the files written anew.`,
  );
}

/** Shapes that have no place. */
export function shapesLeftOut(name: string, count: number, why: string, first: string): Finding {
  return unplaced(
    "readers/shapes-left-out",
    "warning",
    say`${count} shapes of ${name} are left out, the first of them ${first}: ${why}.`,
    say`They have no place on the ground that could be drawn.`,
    say`Look at them where the file was made.`,
  );
}

/** Columns that are not read. */
export function columnsLeftOut(name: string, columns: readonly string[]): Finding {
  return unplaced(
    "readers/columns-left-out",
    "note",
    say`Not read from the table of ${name}: ${listed(columns)}.`,
    say`Their values stand in a file beside the table, or are in a form that is not read here.`,
    say`Have the table written with texts and numbers where they are needed.`,
  );
}

/** A table that does not say in which letters it is written. */
export function lettersTaken(name: string, taken: string, example: string): Finding {
  return unplaced(
    "readers/letters-taken",
    "note",
    say`The table of ${name} does not say in which letters it is written; it was read as ${taken}, which gives "${example}".`,
    say`Names with letters beyond A to Z may come out wrong; numbers do not.`,
    say`Look at the names. A file .cpg beside the table, with UTF-8 or 1252 in it, would say it.`,
  );
}

/** An archive with no shapefile in it. */
export function noShapes(name: string): Finding {
  return unplaced(
    "readers/no-shapes",
    "error",
    say`${name} holds no .shp file.`,
    say`The shapes of a shapefile stand in its .shp.`,
    say`Pack the .shp with the .dbf, .prj and .cpg of the same name into the archive.`,
  );
}
