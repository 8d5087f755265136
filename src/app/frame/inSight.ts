/** For what has just come onto the page: as little is scrolled as brings it in sight. */
export const inSight = (element: Element) => element.scrollIntoView({ block: "nearest" });
