import { unbroken } from "../../../../core";
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

/** Every sentence of the app in French: a file for each English one, which a test holds complete. */
export const french = unbroken({
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
});
