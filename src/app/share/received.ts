import { tooLarge } from "./readFile";

/** Where the service worker leaves what another app shared; see static/share-target.js. */
const SHELF = "stillhot-shared";

/** A link of ours within whatever words a messenger put around it. */
const LINK = /#(?:d1|n1|n1p)\.[\w.-]+/;

/** What was shared, once: it is gone from the shelf afterwards. */
export async function takeShared(nameless: string): Promise<File | { readonly problem: string } | undefined> {
  if (!("caches" in globalThis)) return undefined;
  const shelf = await caches.open(SHELF);
  const found = await shelf.match("shared");
  if (found === undefined) return undefined;
  await shelf.delete("shared");
  const size = Number(found.headers.get("x-size"));
  const body = await found.blob();
  if (size !== body.size) return { problem: tooLarge(size) };
  const name = decodeURIComponent(found.headers.get("x-name") ?? "");
  if (name !== "") return new File([body], name, { type: body.type });
  const text = await body.text();
  return new File([LINK.exec(text)?.[0] ?? text], nameless);
}
