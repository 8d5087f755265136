/** Goes to a place by what stands on the screen: one press at a desk; two on a phone, where the places lie behind a button. */
export async function pressAPlace(page, id, size) {
  if (size === "phone") {
    await page.locator("[data-places]").tap();
    await page.locator(`dialog[open] [data-place="${id}"]`).tap();
  } else await page.locator(`.places .row [data-place="${id}"]`).click();
}
