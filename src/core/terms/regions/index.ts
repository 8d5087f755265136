import type { RegionId } from "./ids";
import type { Region } from "./region";
import { unitedStates } from "./unitedStates";

/** Every region of English that has words of its own. All others say what the catalogue says. */
export const REGIONS: Readonly<Record<RegionId, Region>> = { us: unitedStates };
