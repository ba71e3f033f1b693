/** Id of the kept project that an address names, or null. */
export function idInAddress(address: URL): string | null {
  const id = new URLSearchParams(address.hash.slice(1)).get("project");
  return id === null || id === "" ? null : id;
}

/** The address with the kept project that is on the page in it: what is opened by loading it again. */
export function withProject(address: URL, id: string | null): URL {
  const next = new URL(address);
  if (id === null) {
    next.hash = "";
    return next;
  }
  // They named what was opened first; loading the page again is to open what became of it.
  next.searchParams.delete("sample");
  next.searchParams.delete("open");
  next.hash = `project=${id}`;
  return next;
}

/** Writes it into the address of the page, without a step in the browser's history. */
export function showInAddress(id: string | null): void {
  const next = withProject(new URL(location.href), id);
  if (next.href !== location.href) history.replaceState(history.state, "", next);
}
