/**
 * Prints a page of its own by the browser's print, from a frame that nobody sees. No script runs in it.
 *
 * @returns the frame, which goes when the printing is over
 */
export function printHtml(html: string): HTMLIFrameElement {
  const frame = document.createElement("iframe");
  frame.setAttribute("sandbox", "allow-same-origin allow-modals");
  frame.setAttribute("aria-hidden", "true");
  frame.tabIndex = -1;
  frame.style.cssText = "position:fixed;inset:auto auto 0 0;width:0;height:0;border:0;visibility:hidden";
  frame.srcdoc = html;
  frame.addEventListener("load", () => {
    const shown = frame.contentWindow;
    shown?.addEventListener("afterprint", () => frame.remove());
    shown?.focus();
    shown?.print();
  });
  document.body.append(frame);
  return frame;
}
