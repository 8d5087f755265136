/** Where a point or a device lies in the drawing's own units, from what the drawing says of its places. */
export async function spotOf(page, id) {
  const places = JSON.parse(await page.locator("[data-drawing]").first().getAttribute("data-spots"));
  const [x, y] = places[id];
  return { x, y };
}

/** Where a spot of the drawing lies on the page, from what the drawing says of its camera, once both are at rest. */
export async function onPage(page, { x, y }) {
  const drawing = page.locator("[data-drawing]").first();
  const box = await boxAtRest(drawing);
  const [left, top, scale] = (await drawing.getAttribute("data-camera")).split(" ").map(Number);
  return { x: box.x + x * scale + left, y: box.y + y * scale + top };
}

/**
 * Where something lies on the page, once it lies still: a bar that comes or goes gives the drawing another room, and
 * that another camera, within some frames.
 */
export const boxAtRest = (locator) =>
  locator.evaluate(async (it) => {
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    const place = () => {
      const { x, y, width, height } = it.getBoundingClientRect();
      return { x, y, width, height };
    };
    const look = () => JSON.stringify([place(), it.dataset.camera]);
    for (let before = look(), still = 0; still < 3;) {
      await frame();
      const now = look();
      still = now === before ? still + 1 : 0;
      before = now;
    }
    return place();
  });

/** Presses a point or a device on the drawing. */
export async function pressOn(page, id, touch) {
  await pressAt(page, await spotOf(page, id), touch);
}

export async function pressAt(page, spot, touch) {
  const { x, y } = await onPage(page, spot);
  if (touch) await page.touchscreen.tap(x, y);
  else await page.mouse.click(x, y);
}
