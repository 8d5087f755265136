/** Letters of a link that are read: more than any browser lets a person paste, and little to unpack. */
export const MOST_LINK_LETTERS = 400_000;

const TAG = "stillhot:drawing";
const NAMESPACE = "urn:stillhot:drawing";

/** An SVG of a drawing that carries the drawing, so that the picture opens again. */
export function intoSvg(svg: string, link: string): string {
  const metadata = `<metadata><${TAG} xmlns:stillhot="${NAMESPACE}">${link}</${TAG}></metadata>`;
  const end = svg.lastIndexOf("</svg>");
  return `${svg.slice(0, end)}${metadata}\n${svg.slice(end)}`;
}

/** The link that an SVG carries. The picture itself is never parsed or drawn: anyone may have written it. */
export function linkOfSvg(svg: string): string | undefined {
  const start = svg.indexOf(`<${TAG}`);
  const inner = start === -1 ? -1 : svg.indexOf(">", start);
  const end = inner === -1 ? -1 : svg.indexOf("<", inner);
  if (end === -1 || end - inner > MOST_LINK_LETTERS) return undefined;
  return svg.slice(inner + 1, end).trim();
}
