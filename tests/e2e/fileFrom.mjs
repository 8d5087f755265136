/** The file that a press brings. Both are waited for together: a wait that a failed press leaves behind would end the whole run. */
export async function fileFrom(page, press) {
  const [download] = await Promise.all([page.waitForEvent("download"), press()]);
  return download;
}
