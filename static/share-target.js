/**
 * The part of the service worker that takes what another app shares with this one. It is stored here and opened by the page,
 * so that it also comes in without a network. What it holds is judged where it is opened, as any file is.
 */
const SHELF = "stillhot-shared";
const MOST_BYTES = 20_000_000;

self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  const target = new URL("share", self.registration.scope);
  if (method === "POST" && new URL(url).pathname === target.pathname) event.respondWith(take(event.request));
});

async function take(request) {
  const form = await request.formData().catch(() => undefined);
  const given = form?.getAll("file").find((it) => typeof it !== "string" && it.size > 0);
  const words = [form?.get("text"), form?.get("url")].filter((it) => typeof it === "string" && it.trim() !== "");
  const body = given ?? (words.length > 0 ? new Blob([words[0]], { type: "text/plain" }) : undefined);
  const where = new URL("./", self.registration.scope);
  if (body !== undefined) {
    const shelf = await caches.open(SHELF);
    const name = encodeURIComponent(given?.name ?? "");
    const kept = body.size > MOST_BYTES ? new Blob([]) : body;
    await shelf.put("shared", new Response(kept, { headers: { "x-name": name, "x-size": String(body.size) } }));
    where.searchParams.set("shared", "");
  }
  return Response.redirect(where.href, 303);
}
