const addresses = import.meta.glob<string>("../../samples/*/project.geojson", {
  query: "?url&no-inline",
  import: "default",
  eager: true,
});
const abouts = import.meta.glob<string>("../../samples/*/about.md", { query: "?raw", import: "default", eager: true });

/** A sample that comes with the page. */
export interface Sample {
  readonly name: string;
  readonly address: string;
  readonly title: string;
  readonly about: string;
}

/** The samples in alphabetical order. */
export const samples: readonly Sample[] = Object.entries(addresses)
  .map(([path, address]) => {
    const name = path.split("/").at(-2) ?? path;
    const lines = (abouts[path.replace("project.geojson", "about.md")] ?? "").split("\n").map((line) => line.trim());
    const title = lines.find((line) => line.startsWith("# "))?.slice(2) ?? name;
    return { name, address, title, about: firstParagraph(lines) };
  })
  .sort((a, b) => (a.name < b.name ? -1 : 1));

function firstParagraph(lines: readonly string[]): string {
  const from = lines.findIndex((line) => line !== "" && !line.startsWith("#"));
  if (from < 0) return "";
  const rest = lines.slice(from);
  const length = rest.indexOf("");
  return rest.slice(0, length < 0 ? rest.length : length).join(" ");
}
