/** The regions of English whose words there are, by their ids alone: whoever only asks for one by name carries no words. */
export const REGION_IDS = ["us"] as const;

/** A region of English, by its id. */
export type RegionId = (typeof REGION_IDS)[number];
