import { useState } from "preact/hooks";
import type { OutFile } from "../../core/exchange/format.ts";
import { count, grouped } from "../strip/count.ts";
import type { PreviewTable } from "./preview.ts";
import { textBeginning } from "./text-beginning.ts";
import type { Preview } from "./use-preview.ts";

/** What will be in the files: their names, how each begins, and the first of everything as tables. */
export function PreviewPart({ preview }: { readonly preview: Preview }) {
  const { handed, tables } = preview;
  if (handed === null || handed.files.length === 0) return null;
  return (
    <section class="hand-over-preview" aria-label="What will be in the files" aria-busy={preview.isOld}>
      <h3>{handed.files.length === 1 ? "The file" : count(handed.files.length, "file")}</h3>
      <ul class="hand-over-files">
        {handed.files.slice(0, mostFiles).map((file) => (
          <li key={file.name}>
            <FileBeginning file={file} />
          </li>
        ))}
      </ul>
      {handed.files.length > mostFiles && (
        <p class="aside">and {count(handed.files.length - mostFiles, "more file")}</p>
      )}
      {tables.length > 0 && <h3>What is in {handed.files.length === 1 ? "it" : "them"}</h3>}
      {tables.map((table, i) => (
        <TablePart key={table.name} table={table} isFirst={i === 0} />
      ))}
    </section>
  );
}

/** Split files may be many; their names follow each other. */
const mostFiles = 8;

/** A file's name, opened to see how it begins, as it will be written. */
function FileBeginning({ file }: { readonly file: OutFile }) {
  const [isOpen, setOpen] = useState(false);
  const begins = isOpen ? textBeginning(file) : null;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{file.name}</summary>
      {isOpen && begins === null && <p class="aside">Packed: not text that can be shown.</p>}
      {begins !== null && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys.
        <section class="hand-over-text" tabIndex={0} aria-label={`How ${file.name} begins`}>
          <pre>{begins}</pre>
        </section>
      )}
    </details>
  );
}

function TablePart({ table, isFirst }: { readonly table: PreviewTable; readonly isFirst: boolean }) {
  const { name, lines, heads } = table;
  const rest = table.count - lines.length;
  return (
    <details class="stage-part" open={isFirst}>
      <summary>
        <strong>{name}</strong> <span>{grouped(table.count)}</span>
      </summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys. */}
      <section class="hand-over-table" tabIndex={0} aria-label={`The first of: ${name}`}>
        <table>
          <thead>
            <tr>
              {heads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lines.map((cells) => (
              <tr key={cells.join("\t")}>
                {cells.map((cell, i) => (
                  <td key={heads[i]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {rest > 0 && <p class="aside">and {grouped(rest)} more</p>}
    </details>
  );
}
