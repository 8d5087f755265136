import { app } from "./app";
import { classroom } from "./classroom";
import { company } from "./company";
import { forms } from "./forms";
import { keep } from "./keep";
import { learn } from "./learn";
import { panels } from "./panels";
import { plan } from "./plan";
import { practise } from "./practise";
import { teach } from "./teach";
import { views } from "./views";

/** Every sentence that only the app says, in English, beside those of the core. The first picture comes with those of `app.ts` alone. */
export const english = {
  ...app,
  ...classroom,
  ...company,
  ...forms,
  ...keep,
  ...learn,
  ...panels,
  ...plan,
  ...practise,
  ...teach,
  ...views,
} as const;
