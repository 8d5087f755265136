/** Where a point or a device lies in the drawing's own units, from what the drawing says of its places. */
export async function spotOf(page, id) {
  const places = JSON.parse(await page.locator("[data-drawing]").first().getAttribute("data-spots"));
  const [x, y] = places[id];
  return { x, y };
}

/** Where a spot of the drawing lies on the page, from what the drawing says of its camera. */
export async function onPage(page, { x, y }) {
  const drawing = page.locator("[data-drawing]").first();
  const box = await drawing.boundingBox();
  const [left, top, scale] = (await drawing.getAttribute("data-camera")).split(" ").map(Number);
  return { x: box.x + x * scale + left, y: box.y + y * scale + top };
}

/** Presses a point or a device on the drawing. */
export async function pressOn(page, id, touch) {
  await pressAt(page, await spotOf(page, id), touch);
}

export async function pressAt(page, spot, touch) {
  const { x, y } = await onPage(page, spot);
  if (touch) await page.touchscreen.tap(x, y);
  else await page.mouse.click(x, y);
}
