/** Prints one drawing on a page of its own, lying, as wide as the paper. */
export function printDrawing(title: string, svg: string): void {
  printPage(title, `<style>@page{size:landscape;margin:12mm}body{margin:0}svg{width:100%;height:auto}</style>${svg}`);
}

/** Prints a page that is not shown, beside the one that is. */
export function printPage(title: string, html: string): void {
  const frame = document.createElement("iframe");
  frame.title = title;
  frame.className = "unseen";
  frame.addEventListener("load", () => {
    const page = frame.contentWindow;
    if (!page) return;
    page.addEventListener("afterprint", () => frame.remove());
    page.focus();
    page.print();
  });
  frame.srcdoc = `<!doctype html>${html}`;
  document.body.append(frame);
}
